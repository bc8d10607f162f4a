package org.skeinday.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code watch.judged}: what the captain decided of one timekeeper's watch. Readings stay as they are.
 *
 * @param slot which timekeeper, 1 to 3
 * @param verdict failed (it has no time), left-out (its time does not count) or counts (as if nothing had been said)
 * @param reason in words, never empty
 * @param atMs when, milliseconds since 1970 by the server's clock
 */
public record WatchJudged(
        String id,
        String attemptId,
        int slot,
        String verdict,
        String reason,
        @Nullable String personId,
        long atMs) {
    public static final List<String> VERDICTS = List.of("failed", "left-out", "counts");

    public WatchJudged {
        if (slot < 1 || slot > 3) {
            throw new IllegalArgumentException("A timekeeper's place must be 1 to 3, but was " + slot);
        }
        if (!VERDICTS.contains(verdict)) {
            throw new IllegalArgumentException(
                    "A verdict must be one of " + String.join(", ", VERDICTS) + ", but was '" + verdict + "'");
        }
        if (reason.isBlank()) {
            throw new IllegalArgumentException("What is decided of a watch needs a reason, but had none");
        }
    }
}
