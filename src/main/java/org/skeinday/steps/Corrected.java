package org.skeinday.steps;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code step.corrected}: what a tick said is put right later, beside it and with a reason.
 *
 * @param about id of the tick or reading
 * @param done whether the item was done at all
 * @param answer the right value, null for OK or when it was not done
 * @param reason never empty
 * @param atMs by the server's clock, epoch ms
 */
public record Corrected(
        String id,
        String runId,
        String about,
        String stepId,
        boolean done,
        @Nullable String answer,
        String reason,
        long atMs,
        @Nullable String personId,
        String device)
        implements RunFact {
    public Corrected {
        Preconditions.filled("The run", runId);
        Preconditions.filled("What is corrected", about);
        Preconditions.filled("The item", stepId);
        Preconditions.filled("The reason of a correction", reason);
    }
}
