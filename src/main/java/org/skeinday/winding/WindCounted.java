package org.skeinday.winding;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code wind.counted}: the crank turns, entered once by the reader or after the wind; a later one stands in place
 * of it.
 *
 * @param atFullCrankTurns on at the first step in, null when nobody counted there
 * @param stopCrankTurns on when cranking stopped, 0 or more
 * @param backOffCrankTurns taken off again, halves possible, null when not counted
 * @param paced counted to a metronome: kept out of fits
 */
public record WindCounted(
        String windId,
        @Nullable Integer atFullCrankTurns,
        int stopCrankTurns,
        @Nullable Double backOffCrankTurns,
        boolean paced) {
    public WindCounted {
        Preconditions.filled("The wind", windId);
        Preconditions.within("Crank turns at the last turn", stopCrankTurns, 0, 10_000);
        if (atFullCrankTurns != null) {
            Preconditions.within("Crank turns at full stretch", atFullCrankTurns, 0, 10_000);
            refuseAbove(atFullCrankTurns, stopCrankTurns);
        }
        if (backOffCrankTurns != null) {
            Preconditions.within(
                    "Crank turns taken off, not above those at the last turn", backOffCrankTurns, 0, stopCrankTurns);
        }
    }

    private static void refuseAbove(int atFull, int atStop) {
        if (atFull > atStop) {
            throw new IllegalArgumentException(
                    "Crank turns at full stretch must not be above those at the last turn, but were " + atFull + " and "
                            + atStop);
        }
    }
}
