package org.skeinday.bench.action;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.evidence.ToldOfBreak;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.CrankTurns;
import org.skeinday.winding.store.KnownBounds;

/** The turns at a break of a wind that nobody read, as the counter shows them afterwards. They may be told anew. */
public final class CountBreak {
    /** The field of the form. */
    public static final String FIELD = "broke-at";

    /**
     * @param attempt in which it broke: its winder's ratio counts
     * @param turns crank turns, as typed
     * @param seen id of the break that the page showed
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them; null where none were
     */
    record Told(
            String attempt,
            String motor,
            String turns,
            String seen,
            @Nullable String insist) {}

    private CountBreak() {}

    static Decision decide(Tx tx, ActContext context, Told told) {
        AttemptNow attempt = AttemptStore.find(tx, told.attempt()).orElse(null);
        MotorStep broke = MotorLifeStore.breakOf(tx, told.motor()).orElse(null);
        if (attempt == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        if (broke == null || !broke.id().equals(told.seen())) {
            return new Decision.Outdated("This break was taken back, or told anew meanwhile. Look again.");
        }
        try {
            Integer crankTurns = CrankTurns.whole(told.turns());
            if (crankTurns == null || crankTurns == 0) {
                return Decision.refused(FIELD, "Say how many crank turns were on, as the counter shows them");
            }
            double turns = crankTurns * ratio(tx, attempt);
            return asked(tx, told, turns)
                    .orElseGet(() -> new Decision.Decided(
                            List.of(Fact.of("motor.step.told", told(broke, turns))), Map.of(), BenchActions.IN_HAND));
        } catch (IllegalArgumentException e) {
            return Decision.refused(FIELD, String.valueOf(e.getMessage()));
        }
    }

    private static MotorStep told(MotorStep broke, double turns) {
        return broke.brokeAt(turns, broke.torqueNmm(), broke.torqueTyped(), broke.meter());
    }

    private static Optional<Decision> asked(Tx tx, Told told, double turns) {
        Double breaking = new KnownBounds(tx).breakingTurns(told.motor());
        return AskedOnce.about(new ToldOfBreak(turns, null, null, breaking).doubts(), told.insist(), what -> FIELD);
    }

    private static double ratio(Tx tx, AttemptNow attempt) {
        EventAdded event = EventStore.find(tx, attempt.eventId()).orElseThrow();
        return Stations.ratio(
                EntryStore.find(tx, attempt.entryId()).flatMap(entry -> Stations.of(tx, entry, attempt.id())), event);
    }
}
