package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT_LATER_USES;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_RUN_BACK;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jooq.exception.MappingException;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.LaterUses;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.TurnsRunBack;
import org.skeinday.attempt.WindingEvidence;
import org.skeinday.contest.store.EventStore;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.store.WindStore;

/** Reads what tells of windings: eleven queries, however many there are. */
public final class MotorUseStore {
    private MotorUseStore() {}

    /** The uses of all motors. */
    public static MotorUses all(Tx tx) {
        return MotorUses.of(evidence(tx), MotorStore.all(tx), batches(tx));
    }

    /** With a K that cannot be none is as good as known: any turn counts as a use then, and no page waits for it. */
    private static List<BatchAdded> batches(Tx tx) {
        try {
            return BatchStore.all(tx);
        } catch (MappingException e) {
            return List.of();
        }
    }

    private static WindingEvidence evidence(Tx tx) {
        List<AttemptImported> attempts = AttemptStore.asImported(tx);
        List<PracticeFlown> flights = FlightStore.all(tx);
        Map<String, WindCounted> counted = WindStore.counted(tx);
        return new WindingEvidence(
                EventStore.all(tx),
                attempts,
                flights,
                WindStore.begun(tx),
                counted,
                tx.sql()
                        .selectFrom(ATTEMPT_RUN_BACK)
                        .orderBy(ATTEMPT_RUN_BACK.AT_MS, ATTEMPT_RUN_BACK.ID)
                        .fetchInto(TurnsRunBack.class),
                offered(EvidenceStore.byFlight(tx), attempts, flights, counted),
                Stations.ratios(tx),
                tx.sql().selectFrom(ATTEMPT_LATER_USES).fetchInto(LaterUses.class));
    }

    /** Whose crank turns, as they stand, nobody counted or confirmed. */
    private static Set<String> offered(
            Map<String, ValueMarks> marks,
            List<AttemptImported> attempts,
            List<PracticeFlown> flights,
            Map<String, WindCounted> counted) {
        Map<String, Integer> turns = new HashMap<>();
        counted.forEach((wind, count) -> turns.put(wind, count.stopCrankTurns()));
        attempts.forEach(a -> turns.put(a.id(), a.stopCountCrankTurns()));
        flights.forEach(f -> turns.put(f.id(), f.crankTurns()));
        return marks.entrySet().stream()
                .filter(said -> {
                    Integer stop = turns.get(said.getKey());
                    return stop != null && said.getValue().isOffered(Measured.CRANK_TURNS, stop.doubleValue());
                })
                .map(Map.Entry::getKey)
                .collect(Collectors.toUnmodifiableSet());
    }
}
