package org.skeinday.steps;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code gate.passed}: the supervising adult lets winding start although something is open.
 *
 * @param subjectId the attempt
 * @param adultId the supervising adult, whose name is kept beside the record
 * @param reason never empty
 * @param steps ids of the items that were open and are answered for; what opens later is not among them
 * @param atMs by the server's clock, epoch ms
 * @param stationId winding place at which the attempt was to be wound; null where none is prepared, and in records of before
 */
public record GatePassed(
        String id,
        String subjectId,
        String adultId,
        String reason,
        List<String> steps,
        long atMs,
        String device,
        @Nullable String stationId) {
    public GatePassed {
        steps = List.copyOf(steps);
        Preconditions.filled("The attempt", subjectId);
        Preconditions.filled("The supervising adult", adultId);
        Preconditions.filled("The reason to pass the gate", reason);
    }

    /** Whether it was said of this winding place: another has another mount. @param place null where none is prepared */
    public boolean isOf(@Nullable String place) {
        return stationId == null || stationId.equals(place);
    }

    /** Whether it answers for this item: it names it, and the item was not asked again since. Nobody answers for eyes and line. */
    boolean covers(StepState state) {
        return !state.step().hasNoOverride()
                && steps.contains(state.step().id())
                && state.reopened().filter(again -> again.atMs() > atMs).isEmpty();
    }
}
