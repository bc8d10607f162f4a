package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.closed}: the readings were reduced to the official time.
 *
 * @param officialMs milliseconds
 * @param how the reduction in words, with every reading
 * @param slots watches that it was made of, as 1,2; null in records made before this was kept, and elsewhere
 * @param personId who took it, null in records made before this was kept
 */
public record AttemptClosed(
        String attemptId,
        long atMs,
        long officialMs,
        String how,
        @Nullable String personId,
        @Nullable String slots) {
    /** Longest sentence that the record keeps. */
    private static final int LONGEST_HOW = 1000;

    /** A sentence that fits; all that it was made of is kept beside it. */
    public static String cut(String how) {
        return how.length() <= LONGEST_HOW ? how : how.substring(0, LONGEST_HOW - 1) + "…";
    }
}
