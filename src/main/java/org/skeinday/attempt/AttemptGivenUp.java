package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.given-up}: scrubbed before release (the motor is run back) or void after it, with the reason.
 *
 * @param flownAgain whether a void one uses up nothing; null for no
 * @param turnsOn whether its motor is wound and must be run back; null for no, and in records made before this was kept
 */
public record AttemptGivenUp(
        String attemptId,
        String state,
        long atMs,
        String reason,
        @Nullable Boolean flownAgain,
        @Nullable Boolean turnsOn) {

    /** The same, flown again. */
    public AttemptGivenUp again() {
        return new AttemptGivenUp(attemptId, state, atMs, reason, true, turnsOn);
    }

    /** The same with turns on. */
    public AttemptGivenUp wound() {
        return new AttemptGivenUp(attemptId, state, atMs, reason, flownAgain, true);
    }
}
