package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.signed}: a timekeeper stands for a reading, or the captain for the result.
 *
 * @param signedAs captain, or watch-1 to watch-3
 * @param device on which it was signed
 */
public record AttemptSigned(
        String id,
        String attemptId,
        String signedAs,
        @Nullable String personId,
        String device,
        long atMs) {
    public static final String CAPTAIN = "captain";

    public static String watch(int slot) {
        return "watch-" + slot;
    }
}
