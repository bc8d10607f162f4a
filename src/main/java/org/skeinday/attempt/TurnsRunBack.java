package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.run-back}: a wound motor was run back instead of flown, with the turns that were on.
 *
 * @param windId of the wind that a reader tapped; null where nobody read it
 * @param crankTurns that were on, 0 to 10000, halves possible
 * @param use whether so many turns have used the motor, as it was judged then
 * @param state where the attempt stands from now on: called, or scrubbed where it was given up; as it stood for a
 *     motor that it no longer had
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
}
