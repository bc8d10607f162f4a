package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/** An attempt that the rules allow and nobody has called. @param number 1, 2 … of its entry */
public record PlannedAttempt(String id, String eventId, String entryId, int number) implements Attempt {
    /** Calls the entry, with model and motor where they are known. */
    public AttemptCalled call(@Nullable String modelId, @Nullable String motorId, long atMs) {
        return new AttemptCalled(id, eventId, entryId, number, modelId, motorId, atMs);
    }
}
