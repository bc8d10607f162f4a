package org.skeinday.steps;

import org.jspecify.annotations.Nullable;

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
        Must.beFilled("The run", runId);
        Must.beFilled("What is taken back", about);
    }
}
