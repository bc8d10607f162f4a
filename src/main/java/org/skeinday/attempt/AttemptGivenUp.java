package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.given-up}: scrubbed before release (the motor is run back) or void after it, with the reason.
 *
 * @param flownAgain whether a void one uses up nothing; null for no
 */
public record AttemptGivenUp(
        String attemptId,
        String state,
        long atMs,
        String reason,
        @Nullable Boolean flownAgain) {

    /** The same, flown again. */
    public AttemptGivenUp again() {
        return new AttemptGivenUp(attemptId, state, atMs, reason, true);
    }
}
