package org.skeinday.steps;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code step.ticked}: one item was done, with the value that it asks for.
 *
 * @param answer as typed, null for OK
 * @param revision of the list as the device showed it
 * @param atMs by the server's clock, epoch ms
 */
public record Ticked(
        String id,
        String runId,
        String stepId,
        @Nullable String answer,
        int revision,
        long atMs,
        @Nullable String personId,
        String device)
        implements RunFact {
    public Ticked {
        Preconditions.filled("The run", runId);
        Preconditions.filled("The item", stepId);
        Preconditions.within("The revision", revision, 1, 9999);
    }
}
