package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.acted}: who did the last thing that moved this attempt, so that whoever comes second hears of it.
 *
 * @param phase to which it was moved, a word of {@link AttemptPhase.Name}
 */
public record LastAct(
        String attemptId,
        String phase,
        long atMs,
        @Nullable String personId,
        String device) {}
