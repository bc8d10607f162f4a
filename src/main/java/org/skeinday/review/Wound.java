package org.skeinday.review;

import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.units.Preconditions;

/**
 * How the motor of a flight was wound and how large it is, as far as it was read; null where it was not.
 *
 * @param meter the torque meter that was read
 * @param use which full winding of the motor it was, from 1
 * @param fraction of breaking turns that was wound, before the back-off, above 0; more than 1 is possible
 * @param peakTorqueNmm the highest that was read, N·mm
 * @param holdSeconds from the end of winding to the release
 * @param loopMm relaxed length of the motor
 * @param massG of its rubber
 */
public record Wound(
        @Nullable String meter,
        @Nullable Integer use,
        @Nullable Double fraction,
        @Nullable Double peakTorqueNmm,
        @Nullable Double holdSeconds,
        @Nullable Double loopMm,
        @Nullable Double massG) {
    /** Nothing of it is known. */
    public static final Wound UNKNOWN = new Wound(null, null, null, null, null, null, null);

    /** What is known of it where no more is known of the flight than this. */
    Wound knowing(Flight counted) {
        return new Wound(
                meter,
                use,
                counted.stopCrankTurns() == null ? null : fraction,
                counted.peakTorqueNmm() == null ? null : peakTorqueNmm,
                holdSeconds,
                loopMm,
                massG);
    }

    public Wound {
        Preconditions.withinIfKnown("The use", use, 1, 100);
        Preconditions.withinIfKnown("The fraction of breaking turns", fraction, Double.MIN_VALUE, 2);
        Preconditions.withinIfKnown("The peak torque in N·mm", peakTorqueNmm, 0, 10_000);
        Preconditions.withinIfKnown("The hold in seconds", holdSeconds, 0, 86_400);
        Preconditions.withinIfKnown("The loop in mm", loopMm, Double.MIN_VALUE, 5_000);
        Preconditions.withinIfKnown("The mass in g", massG, Double.MIN_VALUE, 500);
    }
}
