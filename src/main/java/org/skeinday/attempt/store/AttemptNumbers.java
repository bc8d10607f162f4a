package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptCount;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.State;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.AttemptRecord;
import org.skeinday.standing.Scoring;

/**
 * Which attempt of the rules each one is. Counted out at each reading and kept nowhere: a time that is opened again, a word of
 * the captain and a change of the rules change it.
 */
public final class AttemptNumbers {
    private AttemptNumbers() {}

    /** Of all attempts there are, by their ids. */
    public static Map<String, AttemptNumber> all(Tx tx) {
        Map<String, EventAdded> events =
                EventStore.all(tx).stream().collect(Collectors.toMap(EventAdded::id, Function.identity()));
        Map<String, FlightRules> rules =
                FlightRulesStore.all(tx).stream().collect(Collectors.toMap(FlightRules::eventId, Function.identity()));
        return of(rows(tx, DSL.noCondition()), events::get, id -> rules.getOrDefault(id, FlightRules.usual(id)));
    }

    /** Of the one that this entry calls next. */
    public static AttemptNumber next(Tx tx, EntryAdded entry) {
        String event = entry.eventId();
        return counted(
                        EventStore.find(tx, event).orElseThrow(),
                        FlightRulesStore.of(tx, event),
                        rows(tx, ATTEMPT.ENTRY_ID.eq(entry.id())))
                .next();
    }

    /** Running numbers of the tries of one attempt of the rules, from this one back to the first. */
    static List<Integer> triesUpTo(Tx tx, EntryAdded entry, AttemptNumber number) {
        if (!number.isRepeat()) {
            return List.of(number.running());
        }
        Stream<Integer> before = of(tx, rows(tx, ATTEMPT.ENTRY_ID.eq(entry.id()))).values().stream()
                .filter(other -> other.rule() == number.rule() && other.running() < number.running())
                .map(AttemptNumber::running)
                .sorted(Comparator.reverseOrder());
        return Stream.concat(Stream.of(number.running()), before).toList();
    }

    /** @param rows all attempts of an entry or an event */
    static Map<String, AttemptNumber> of(Tx tx, List<AttemptRecord> rows) {
        return of(tx, rows, id -> EventStore.find(tx, id).orElseThrow());
    }

    /** The same where the events are known. */
    static Map<String, AttemptNumber> of(Tx tx, List<AttemptRecord> rows, Function<String, EventAdded> events) {
        return of(rows, events, id -> FlightRulesStore.of(tx, id));
    }

    private static Map<String, AttemptNumber> of(
            List<AttemptRecord> rows,
            Function<String, @Nullable EventAdded> events,
            Function<String, FlightRules> rules) {
        Map<String, AttemptNumber> numbers = new HashMap<>();
        rows.stream().collect(Collectors.groupingBy(AttemptRecord::getEventId)).forEach((id, ofEvent) -> {
            EventAdded event = Objects.requireNonNull(events.apply(id));
            FlightRules said = rules.apply(id);
            ofEvent.stream()
                    .collect(Collectors.groupingBy(AttemptRecord::getEntryId))
                    .values()
                    .forEach(own -> numbers.putAll(counted(event, said, own).byId()));
        });
        return numbers;
    }

    private static AttemptCount counted(EventAdded event, FlightRules rules, List<AttemptRecord> own) {
        return AttemptCount.of(
                own.stream().map(AttemptNumbers::tried).toList(), Scoring.of(event, rules), !event.ofPractice());
    }

    private static List<AttemptRecord> rows(Tx tx, Condition which) {
        return tx.sql()
                .selectFrom(ATTEMPT)
                .where(which)
                .orderBy(ATTEMPT.ENTRY_ID, ATTEMPT.NUMBER)
                .fetch();
    }

    private static AttemptCount.Tried tried(AttemptRecord r) {
        return new AttemptCount.Tried(
                r.getId(),
                r.getNumber(),
                State.of(r.getState()),
                r.getOfficialMs(),
                r.getVoidReason(),
                r.getFlownAgain(),
                VerdictStore.rule(r));
    }
}
