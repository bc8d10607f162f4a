package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

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
        if (stopCountCrankTurns < 0 || stopCountCrankTurns > 10_000) {
            throw new IllegalArgumentException(
                    "Crank turns at the stop must be 0 to 10000, but were " + stopCountCrankTurns);
        }
    }
}
