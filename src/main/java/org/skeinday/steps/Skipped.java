package org.skeinday.steps;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code step.skipped}: an item was left out; it stays visible with its reason.
 *
 * @param reason never empty
 * @param atMs by the server's clock, epoch ms
 */
public record Skipped(
        String id,
        String runId,
        String stepId,
        String reason,
        int revision,
        long atMs,
        @Nullable String personId,
        String device)
        implements RunFact {
    public Skipped {
        Preconditions.filled("The run", runId);
        Preconditions.filled("The item", stepId);
        Preconditions.filled("The reason to leave an item out", reason);
        Preconditions.within("The revision", revision, 1, 9999);
    }
}
