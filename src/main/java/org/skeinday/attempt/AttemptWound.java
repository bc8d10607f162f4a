package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.wound}: what the wind came to.
 *
 * @param stopCountCrankTurns on when cranking stopped
 * @param launchTorqueNmm as the motor left the meter, null when nobody read it; {@code launchTorqueTyped} as typed, or
 *     as the marks came to
 */
public record AttemptWound(
        String attemptId,
        int stopCountCrankTurns,
        @Nullable Double launchTorqueNmm,
        @Nullable String launchTorqueTyped) {
    public AttemptWound {
        Preconditions.within("Crank turns at the stop", stopCountCrankTurns, 0, 10_000);
    }
}
