package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.protested}: a mark beside a result, and how it was settled.
 *
 * @param late whether the time to protest was over
 * @param settled how it ended, in words; null as long as it is open
 */
public record Protest(
        String id,
        String attemptId,
        String words,
        @Nullable String personId,
        long atMs,
        boolean late,
        @Nullable String settled,
        @Nullable Long settledAtMs) {
    public boolean stillOpen() {
        return settled == null;
    }

    public Protest settle(String how, long nowMs) {
        return new Protest(id, attemptId, words, personId, atMs, late, how, nowMs);
    }
}
