package org.skeinday.steps;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code step.reopened}: what was done does not hold any more, and the item is asked again.
 *
 * @param reason what changed, in words
 * @param atMs by the server's clock, epoch ms
 */
public record Reopened(
        String id,
        String runId,
        String stepId,
        String reason,
        long atMs,
        @Nullable String personId,
        String device) implements RunFact {
    public Reopened {
        Preconditions.filled("The run", runId);
        Preconditions.filled("The item", stepId);
        Preconditions.filled("The reason to ask again", reason);
    }
}
