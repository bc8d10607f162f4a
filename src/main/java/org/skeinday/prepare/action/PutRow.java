package org.skeinday.prepare.action;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.store.EventsUnderWay;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.CrewLineId;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.DayRows;
import org.skeinday.exchange.action.ExchangeDayReader;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.prepare.Sheet;

/** One thing that is prepared: added, or changed. A form asks and refuses what a file asks and refuses. */
public final class PutRow {
    static final Set<String> TOPICS = Set.of("attempts", "contest", "motors");
    /** What a file adds is changed where it is there; other facts of a row take the place of the one before by themselves. */
    private static final Map<String, String> CHANGED = Map.of(
            "event.added", "event.changed",
            "model.added", "model.changed",
            "batch.added", "batch.changed",
            "motor.added", "motor.changed",
            "entry.added", "entry.changed",
            "window.added", "window.changed",
            "station.added", "station.changed",
            "flight.flown", "flight.changed");

    /**
     * A row.
     *
     * @param file that the thing is a row of
     * @param id of the thing that is changed; null for a new one
     * @param cells text by column
     * @param seen the row as the form showed it, null when it showed none
     * @param zone of the days and times in it
     * @param offered columns of which the form proposed the text and nobody said that it was so; null for none
     * @param insist unlikely numbers that were asked about and are so, as {@code AskedOnce} named them; null for none
     * @param frozen what was said to a change of rules that are frozen; null for nothing
     */
    public record Put(
            String file,
            @Nullable String id,
            Map<String, String> cells,
            @Nullable Map<String, String> seen,
            String zone,
            @Nullable List<String> offered,
            @Nullable String insist,
            @Nullable FrozenRules frozen) {
        /** Of what no rules are. */
        public Put(
                String file,
                @Nullable String id,
                Map<String, String> cells,
                @Nullable Map<String, String> seen,
                String zone,
                @Nullable List<String> offered,
                @Nullable String insist) {
            this(file, id, cells, seen, zone, offered, insist, null);
        }

        public Put(
                String file,
                @Nullable String id,
                Map<String, String> cells,
                @Nullable Map<String, String> seen,
                String zone) {
            this(file, id, cells, seen, zone, null, null, null);
        }
    }

    private PutRow() {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        return List.of(
                new ActKind<>("prepare.put", Put.class, (tx, context, put) -> decide(tx, context, put, people.get())),
                new ActKind<>(
                        "prepare.remove",
                        RemoveRow.Remove.class,
                        (tx, context, remove) -> RemoveRow.decide(tx, remove, people.get())));
    }

    static Decision decide(Tx tx, ActContext context, Put put, Map<String, String> people) {
        Sheet thing = Sheet.ofFile(put.file());
        ZoneId zone = ZoneId.of(put.zone());
        Day day = ExchangeDayReader.prepared(tx, people);
        @Nullable String id = put.id();
        if (id == null) {
            return decided(tx, context, put, DayRows.read(put.file(), put.cells(), day, context::nextId, zone), thing);
        }
        Optional<DayRows.RowText> now = row(day, zone, put.file(), id);
        if (now.isEmpty()) {
            return Decision.unknown("There is no such " + thing.one() + " any more; look again");
        }
        Optional<String> changed = changed(put.seen(), now.get().cells());
        if (changed.isPresent()) {
            return new Decision.Outdated(changed.get());
        }
        Optional<Decision> moved = movedToAnotherEvent(tx, thing, put, now.get());
        if (moved.isPresent()) {
            return moved.get();
        }
        Day others = day.without(put.file(), id);
        String subject = thing == Sheet.CREW ? CrewLineId.parse(id).personId() : id;
        boolean erased = thing == Sheet.CREW && !day.people().containsKey(subject);
        return decided(
                tx,
                context,
                put,
                DayRows.read(put.file(), put.cells(), others, erased ? context::nextId : own(context, subject), zone),
                thing);
    }

    /** What hangs on an entry belongs to its event; terms and rules are of one event for good. */
    private static Optional<Decision> movedToAnotherEvent(Tx tx, Sheet thing, Put put, DayRows.RowText now) {
        String event = now.cells().getOrDefault("event", "");
        if ((thing != Sheet.ENTRIES && !thing.isOfOneEvent())
                || event.equals(put.cells().getOrDefault("event", ""))) {
            return Optional.empty();
        }
        List<String> hangs = thing.isOfOneEvent()
                ? List.of("been set for " + event)
                : RemoveRow.hangsOn(thing, ExchangeDayReader.all(tx, Map.of()), now.id());
        return hangs.isEmpty()
                ? Optional.empty()
                : Optional.of(Decision.refused(
                        "event",
                        "The event stays " + event + ": this has " + String.join(" and ", hangs)
                                + ". Add another one for the other event."));
    }

    static Optional<DayRows.RowText> row(Day day, ZoneId zone, String file, String id) {
        return DayRows.one(day, zone, file, id);
    }

    /** The thing's own id is asked for first; a line of the crew is about a person, and another one where a name was erased. */
    private static Supplier<String> own(ActContext context, String subject) {
        Iterator<String> own = List.of(subject).iterator();
        return () -> own.hasNext() ? own.next() : context.nextId();
    }

    /** What is different now, in words; empty when nothing is. */
    static Optional<String> changed(@Nullable Map<String, String> seen, Map<String, String> now) {
        if (seen == null || seen.equals(now)) {
            return Optional.empty();
        }
        String what = now.entrySet().stream()
                .filter(cell -> !cell.getValue().equals(seen.getOrDefault(cell.getKey(), "")))
                .map(cell -> cell.getKey() + " was " + shown(seen.getOrDefault(cell.getKey(), "")) + ", now it is "
                        + shown(cell.getValue()))
                .sorted()
                .collect(Collectors.joining("; "));
        return Optional.of("Someone else was quicker: " + what + ". Save again to put yours in its place.");
    }

    private static String shown(String text) {
        return text.isEmpty() ? "empty" : "‘" + text + "’";
    }

    private static Decision decided(Tx tx, ActContext context, Put put, DayFiles.Read read, Sheet thing) {
        if (!read.errors().isEmpty()) {
            return refused(read.errors());
        }
        Optional<Decision> asked = PutFlight.asked(tx, put, read);
        if (asked.isPresent()) {
            return asked.get();
        }
        @Nullable String id = put.id();
        List<Fact> facts = new ArrayList<>();
        if (id != null && thing == Sheet.CREW) {
            facts.add(RemoveRow.crewRemoved(id)); // the old line is gone, what is added is another
        }
        for (DayFiles.Named named : read.facts()) {
            facts.add(Fact.of(
                    id == null ? named.kind() : CHANGED.getOrDefault(named.kind(), named.kind()), named.body()));
        }
        FrozenRules said = put.frozen() == null ? FrozenRules.NOTHING_SAID : put.frozen();
        FrozenRules.Outcome frozen = said.of(tx, context, put, facts);
        if (frozen.refused().isPresent()) {
            return frozen.refused().get();
        }
        facts.addAll(frozen.more());
        facts.addAll(PutFlight.marks(tx, context, put, read));
        EventsUnderWay.stays(tx, facts).ifPresent(facts::add);
        return new Decision.Decided(facts, read.names(), TOPICS);
    }

    private static Decision refused(List<CellError> errors) {
        Map<String, String> fields = new LinkedHashMap<>();
        for (CellError error : errors) {
            fields.putIfAbsent(error.column(), error.inForm());
        }
        return new Decision.Refused(
                String.join(" ", errors.stream().map(CellError::inForm).toList()), fields);
    }
}
