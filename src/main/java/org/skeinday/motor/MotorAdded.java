package org.skeinday.motor;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code motor.added}: one loop.
 *
 * @param direction cw or acw for life, seen from the winder
 * @param loopMm relaxed length ring to ring, as typed in {@code loopTyped}
 * @param massG rubber only, dry, as typed in {@code massTyped}
 * @param breakingTurns motor turns of its own, null when the batch's K tells
 * @param uses windings beyond half of the breaking turns that it had when it was added
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
        if (tag.isBlank()) {
            throw new IllegalArgumentException("The motor's tag must not be empty");
        }
        if (!direction.equals("cw") && !direction.equals("acw")) {
            throw new IllegalArgumentException("The direction must be cw or acw, but was '" + direction + "'");
        }
        if (!(loopMm > 0) || !(massG > 0) || uses < 0) {
            throw new IllegalArgumentException("Loop and mass must be above zero and uses zero or more, but were "
                    + loopMm + " mm, " + massG + " g, " + uses);
        }
    }
}
