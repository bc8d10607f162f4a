package org.skeinday.steps;

import java.util.List;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code gate.passed}: the supervising adult lets winding start although something is open.
 *
 * @param subjectId the attempt
 * @param adultId the supervising adult, whose name is kept beside the record
 * @param reason never empty
 * @param steps ids of the items that were open and are answered for; what opens later is not among them
 * @param atMs by the server's clock, epoch ms
 */
public record GatePassed(
        String id, String subjectId, String adultId, String reason, List<String> steps, long atMs, String device) {
    public GatePassed {
        steps = List.copyOf(steps);
        Preconditions.filled("The attempt", subjectId);
        Preconditions.filled("The supervising adult", adultId);
        Preconditions.filled("The reason to pass the gate", reason);
    }

    /** Whether it answers for this item: it names it, and the item was not asked again since. Nobody answers for eyes and line. */
    boolean covers(StepState state) {
        return !state.step().hasNoOverride()
                && steps.contains(state.step().id())
                && state.reopened().filter(again -> again.atMs() > atMs).isEmpty();
    }
}
