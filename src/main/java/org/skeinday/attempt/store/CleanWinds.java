package org.skeinday.attempt.store;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindWinder;
import org.skeinday.winding.store.WindStore;
import org.skeinday.winding.store.WindWorth;

/**
 * Clean winds by person: counted, without a break and without a doubt that nobody has cleared. The one who winds is who
 * was named for it when the wind began, since who holds the device reads; a wind without an attempt is of the person whose
 * device it was.
 */
public final class CleanWinds {
    private CleanWinds() {}

    /** By person id; who has none is not there. */
    public static Map<String, Integer> byPerson(Tx tx) {
        Map<String, Integer> counts = new HashMap<>();
        var worth = new WindWorth(tx);
        for (BatchAdded batch : BatchStore.all(tx)) {
            for (Wind wind : WindStore.countedOfBatch(tx, batch.id())) {
                if (isClean(wind, worth)) {
                    winder(tx, wind).ifPresent(person -> counts.merge(person, 1, Integer::sum));
                }
            }
        }
        return Map.copyOf(counts);
    }

    /** To a metronome too: it is wound as well, though it enters no fit. */
    private static boolean isClean(Wind wind, WindWorth worth) {
        return wind.broke().isEmpty()
                && worth.leftOut(wind).isEmpty()
                && worth.count(wind).isEmpty()
                && worth.askedReadings(wind).isEmpty();
    }

    private static Optional<String> winder(Tx tx, Wind wind) {
        String attempt = wind.begun().attemptId();
        if (attempt == null) {
            return Optional.ofNullable(wind.begun().personId()).filter(id -> !id.isEmpty());
        }
        Optional<String> then = WindStore.winder(tx, wind.begun().id());
        return (then.isPresent() ? then : named(tx, attempt)).filter(id -> !id.equals(WindWinder.NOBODY));
    }

    /** Records of before say only who is named now. */
    private static Optional<String> named(Tx tx, String attempt) {
        return AttemptStore.find(tx, attempt)
                .flatMap(a -> EntryStore.find(tx, a.entryId())
                        .flatMap(entry -> Assignments.named(tx, entry, a.number(), "winds")))
                .map(assigned -> assigned.people().get(0));
    }
}
