package org.skeinday.steps;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code step.taken-back}: a tap that was a slip, at once; it counts only within the time to undo ({@link Pauses}).
 *
 * @param about id of the tick, reading, skip or correction
 * @param atMs by the server's clock, epoch ms
 */
public record TakenBack(
        String id,
        String runId,
        String about,
        long atMs,
        @Nullable String personId,
        String device) implements RunFact {
    public TakenBack {
        Preconditions.filled("The run", runId);
        Preconditions.filled("What is taken back", about);
    }
}
