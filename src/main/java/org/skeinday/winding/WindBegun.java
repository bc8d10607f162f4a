package org.skeinday.winding;

import org.jspecify.annotations.Nullable;
import org.skeinday.motor.StopRule;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code wind.begun}: the first crank turn, with everything that was planned by then. What is not known is null,
 * and only the figures that need it are missing later.
 *
 * @param attemptId null for a wind outside any attempt
 * @param meter the torque meter that is read, null when none is
 * @param ratio motor turns per crank turn, 0.1 to 100
 * @param divisionNmm torque from one mark of the meter to the next, in N·mm, above 0
 * @param fullScaleNmm the meter's last mark, in N·mm, not below one division
 * @param targetCrankTurns the count at which winding ends at the latest, 1 or more
 * @param atFullCrankTurns planned at full stretch, not above the target
 * @param backOffCrankTurns planned to be taken off again at least, 0 or more
 * @param ceilingNmm torque at which winding ends, in N·mm, not below one division
 * @param stop what ends the wind: count, torque or breaking
 * @param use which full winding of the motor it is, from 1
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 * @param paced cranked to a metronome: kept out of fits
 */
public record WindBegun(
        String id,
        @Nullable String attemptId,
        String motorId,
        @Nullable String stationId,
        @Nullable String meter,
        double ratio,
        @Nullable Double divisionNmm,
        @Nullable Double fullScaleNmm,
        @Nullable Integer targetCrankTurns,
        @Nullable Integer atFullCrankTurns,
        int backOffCrankTurns,
        @Nullable Double ceilingNmm,
        String stop,
        int use,
        String device,
        @Nullable String personId,
        long atMs,
        boolean paced) {
    private static final int MOST_CRANK_TURNS = 10_000;

    public WindBegun {
        Preconditions.filled("The wind's id", id);
        Preconditions.filled("The motor", motorId);
        Preconditions.within("The winder's ratio", ratio, 0.1, 100);
        checkMeter(divisionNmm, fullScaleNmm, ceilingNmm);
        checkTurns(targetCrankTurns, atFullCrankTurns);
        Preconditions.within("The back-off in crank turns", backOffCrankTurns, 0, 1_000);
        Preconditions.within("The use", use, 1, 100);
        StopRule.of(stop);
    }

    private static void checkMeter(@Nullable Double division, @Nullable Double fullScale, @Nullable Double ceiling) {
        double least = 0;
        if (division != null) {
            Preconditions.above("One division of the meter in N·mm", division, 0);
            least = division;
        }
        if (fullScale != null) {
            Preconditions.above("The meter's full scale in N·mm", fullScale, 0);
            Preconditions.within("The meter's full scale in N·mm, at least one division", fullScale, least, 10_000);
        }
        if (ceiling != null) {
            Preconditions.above("The ceiling in N·mm", ceiling, 0);
            Preconditions.within("The ceiling in N·mm, at least one division of the meter", ceiling, least, 10_000);
        }
    }

    private static void checkTurns(@Nullable Integer target, @Nullable Integer atFull) {
        int most = MOST_CRANK_TURNS;
        if (target != null) {
            Preconditions.within("The target in crank turns", target, 1, most);
            most = target;
        }
        if (atFull != null) {
            Preconditions.within("Crank turns at full stretch, not above the target", atFull, 0, most);
        }
    }

    public StopRule stopRule() {
        return StopRule.of(stop);
    }
}
