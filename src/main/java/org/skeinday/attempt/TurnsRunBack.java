package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.run-back}: a wound motor was run back instead of flown, with the turns that were on.
 *
 * @param windId of the wind that a reader tapped; null where nobody read it
 * @param crankTurns that were on, 0 to 10000, halves possible
 * @param use whether so many turns have used the motor, as it was judged then
 * @param state where the attempt stands from now on: called, or scrubbed where it was given up
 * @param atMs by the server's clock, ms since 1970 UTC
 */
public record TurnsRunBack(
        String id,
        String attemptId,
        String motorId,
        @Nullable String windId,
        double crankTurns,
        boolean use,
        String state,
        long atMs,
        @Nullable String personId,
        String device) {
    public TurnsRunBack {
        Preconditions.within("Crank turns that were on", crankTurns, 0, 10_000);
    }

    /**
     * Whether so many turns have used the motor: more than half of those that break it (own default). Where those are not
     * known any turn counts.
     *
     * @param breakingTurns of the motor, in motor turns; null while not known
     */
    public static boolean isUse(double motorTurns, @Nullable Double breakingTurns) {
        return breakingTurns == null ? motorTurns > 0 : motorTurns > breakingTurns / 2;
    }
}
