package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.turns-off}: some turns of a wound motor were taken off again while it was held. The hold goes on from
 * the last turn that was put on.
 *
 * @param crankTurns taken off, above 0 to 10,000; halves possible
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 */
public record TurnsTakenOff(
        String id,
        String attemptId,
        String motorId,
        double crankTurns,
        long atMs,
        @Nullable String personId,
        String device) {
    public TurnsTakenOff {
        Preconditions.filled("The attempt", attemptId);
        Preconditions.filled("The motor", motorId);
        Preconditions.above("Crank turns that were taken off", crankTurns, 0);
        Preconditions.within("Crank turns that were taken off", crankTurns, 0, 10_000);
    }
}
