package org.skeinday.attempt.store;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.ResultSheet;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.standing.Scoring;

/**
 * The result sheet of an event as it stands, and as it would be by other rules or with other times.
 *
 * @param attempts as the record has them
 */
public record EventSheet(
        String event, List<AttemptNow> attempts, Map<String, LiveAttempt> live, Set<String> protested) {

    public static EventSheet read(Tx tx, String event) {
        List<AttemptEvidence> known = LiveAttempts.evidenceOfEvent(tx, event);
        return new EventSheet(
                event,
                known.stream().map(AttemptEvidence::now).toList(),
                known.stream().map(LiveAttempt::of).collect(Collectors.toMap(LiveAttempt::id, Function.identity())),
                protested(tx));
    }

    /** Against which a protest is open. */
    public static Set<String> protested(Tx tx) {
        return ResultRecord.protests(tx).entrySet().stream()
                .filter(of -> of.getValue().stream().anyMatch(Protest::stillOpen))
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }

    /** @param times by attempt, those that are others than on record */
    public ResultSheet by(Tx tx, EventAdded rules, FlightRules flights, Map<String, Long> times) {
        List<AttemptNow> timed = attempts.stream()
                .map(a -> times.containsKey(a.id()) ? a.timed(times.getOrDefault(a.id(), 0L)) : a)
                .toList();
        return ResultSheet.of(
                new ResultSheet.Known(rules, Scoring.of(rules, flights), timed, live, protested),
                EntryStore.ofEvent(tx, event));
    }
}
