package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/** An attempt as it stands. Times are milliseconds since 1970, null for steps that were not reached. */
public record AttemptNow(
        String id,
        String eventId,
        String entryId,
        int number,
        @Nullable String modelId,
        @Nullable String motorId,
        State state,
        @Nullable Long calledAtMs,
        @Nullable Long releasedAtMs,
        @Nullable Long officialMs,
        @Nullable String how,
        @Nullable String voidReason,
        @Nullable Long landedAtMs,
        @Nullable Long closedAtMs,
        boolean flownAgain) {}
