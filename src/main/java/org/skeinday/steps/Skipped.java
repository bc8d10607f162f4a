package org.skeinday.steps;

import org.jspecify.annotations.Nullable;

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
        Must.beFilled("The run", runId);
        Must.beFilled("The item", stepId);
        Must.beFilled("The reason to leave an item out", reason);
        Must.beWithin("The revision", revision, 1, 9999);
    }
}
