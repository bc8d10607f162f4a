package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.acted}: who did the last thing that moved this attempt, so that whoever comes second hears of it.
 *
 * @param attemptId or the id of a motor that no attempt has in hand, and that was run back; or of a window that was tapped; or
 *     of something that can be said anew: the attempt's or the entry's, a # and what it is
 * @param said in a word or a few, as {@link AttemptAct} says it
 */
public record LastAct(
        String attemptId, String said, long atMs, @Nullable String personId, String device) {}
