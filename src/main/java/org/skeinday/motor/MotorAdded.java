package org.skeinday.motor;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code motor.added}: one loop.
 *
 * @param direction cw or acw for life, seen from the winder
 * @param loopMm relaxed length ring to ring, as typed in {@code loopTyped}
 * @param massG rubber only, dry, as typed in {@code massTyped}
 * @param breakingTurns motor turns of its own, null when the batch's K tells
 * @param uses windings beyond half of the breaking turns before the first that is on record
 */
public record MotorAdded(
        String id,
        String tag,
        String batchId,
        String team,
        String direction,
        double loopMm,
        String loopTyped,
        double massG,
        String massTyped,
        @Nullable Integer breakingTurns,
        int uses) {
    public MotorAdded {
        Preconditions.filled("The motor's tag", tag);
        Preconditions.oneOf("The direction", direction, Direction.WORDS);
        Preconditions.within("The loop in mm", loopMm, LEAST_LOOP_MM, MOST_LOOP_MM);
        Preconditions.within("The mass in g", massG, LEAST_MASS_G, MOST_MASS_G);
        Preconditions.within("The uses", uses, 0, MOST_USES);
    }

    /** The same with so many uses before the first winding on record. */
    public MotorAdded used(int before) {
        return new MotorAdded(
                id, tag, batchId, team, direction, loopMm, loopTyped, massG, massTyped, breakingTurns, before);
    }

    public Direction turns() {
        return Direction.of(direction);
    }

    /** A loop that can be wound at all, and a slip of the keys told from one. */
    public static final double LEAST_LOOP_MM = 10;

    public static final double MOST_LOOP_MM = 5_000;
    public static final double LEAST_MASS_G = 0.01;
    public static final double MOST_MASS_G = 500;
    public static final int MOST_USES = 90;
}
