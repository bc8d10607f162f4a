package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/** Fact {@code attempt.reopened}: a closed attempt is open again, its signatures count no more; the old time is kept. */
public record AttemptReopened(
        String id,
        String attemptId,
        long atMs,
        String reason,
        @Nullable String personId) {}
