package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptWound;
import org.skeinday.attempt.action.BrokenMotor;
import org.skeinday.attempt.action.CameFrom;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.units.Torque;
import org.skeinday.winding.Wind;

/**
 * What was read of a wind changes after its turns were counted: a tap comes in late, is undone, left out or taken in again.
 * Its torques follow at once, and so does whether it lies above the batch's band, as if it had been read so from the start.
 */
final class TorquesFollow {
    private TorquesFollow() {}

    /** Nothing before the turns are counted: then the count itself says all of it. */
    static List<Fact> marks(Tx tx, ActContext context, Wind before, Wind after) {
        if (after.counted() == null) {
            return List.of();
        }
        List<Fact> facts = new ArrayList<>();
        String attempt = after.begun().attemptId();
        boolean whole = before.broke().isEmpty() && after.broke().isEmpty();
        if (attempt != null && whole && !WindActions.isOver(tx, after)) {
            launch(tx, context, attempt, before, after, facts);
            peak(tx, context, attempt, before, after, facts);
        }
        facts.addAll(AboveBand.marks(tx, context, after, Set.of()));
        return facts;
    }

    /** Unless somebody has typed another since. */
    private static void launch(Tx tx, ActContext context, String attempt, Wind before, Wind after, List<Fact> facts) {
        AttemptWound wound = AttemptStore.wound(tx, attempt).orElse(null);
        Torque launch = after.launchTorque().orElse(null);
        if (wound == null || !follows(wound.launchTorqueNmm(), before.launchTorque(), launch)) {
            return;
        }
        facts.add(Fact.of(
                "attempt.wound", new AttemptWound(attempt, wound.stopCountCrankTurns(), nmm(launch), typed(launch))));
        tapped(context, attempt, Measured.LAUNCH_TORQUE, launch, facts);
    }

    private static void peak(Tx tx, ActContext context, String attempt, Wind before, Wind after, List<Fact> facts) {
        AttemptNoted noted = AttemptStore.note(tx, attempt);
        Torque peak = after.peakTorque().orElse(null);
        if (!follows(noted.peakTorqueNmm(), before.peakTorque(), peak)) {
            return;
        }
        facts.add(Fact.of("attempt.noted", noted.wound(nmm(peak), typed(peak), noted.backOffCrankTurns())));
        tapped(context, attempt, Measured.PEAK_TORQUE, peak, facts);
    }

    /** Whether what the attempt says is what the wind said before, and another than it says now. */
    private static boolean follows(@Nullable Double said, Optional<Torque> before, @Nullable Torque now) {
        return Objects.equals(said, nmm(before.orElse(null))) && !Objects.equals(said, nmm(now));
    }

    private static @Nullable Double nmm(@Nullable Torque torque) {
        return torque == null ? null : (Double) torque.newtonMillimetres();
    }

    private static @Nullable String typed(@Nullable Torque torque) {
        return torque == null ? null : BrokenMotor.typed(torque);
    }

    private static void tapped(
            ActContext context, String attempt, Measured what, @Nullable Torque torque, List<Fact> facts) {
        if (torque != null) {
            facts.add(CameFrom.mark(context, attempt, what, torque.newtonMillimetres(), Source.TAP));
        }
    }
}
