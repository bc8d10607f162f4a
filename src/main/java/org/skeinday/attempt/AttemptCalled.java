package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/** Fact {@code attempt.called}: an entry was called for its next attempt, with model and motor where they are known. */
public record AttemptCalled(
        String id,
        String eventId,
        String entryId,
        int number,
        @Nullable String modelId,
        @Nullable String motorId,
        long calledAtMs) {}
