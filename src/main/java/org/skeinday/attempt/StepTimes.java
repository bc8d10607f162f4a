package org.skeinday.attempt;

import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/** When an attempt took its steps, ms since 1970 UTC; null for those that were not reached or not noted. */
public record StepTimes(
        String attempt,
        @Nullable Long calledAtMs,
        @Nullable Long windingAtMs,
        @Nullable Long holdingAtMs,
        @Nullable Long releasedAtMs,
        @Nullable Long landedAtMs) {

    /** When this part began. */
    public @Nullable Long began(Part part) {
        return switch (part) {
            case PREPARE -> calledAtMs;
            case WIND -> windingAtMs;
            case LOAD -> holdingAtMs;
            case FLY -> releasedAtMs;
            case RUN_BACK -> landedAtMs;
        };
    }

    /** The same where people told both steps as they were: those told afterwards, both at once, say nothing. */
    public OptionalLong notedSeconds(Part part) {
        OptionalLong took = tookSeconds(part);
        return took.isPresent() && part.isNoted(took.getAsLong()) ? took : OptionalLong.empty();
    }

    /** How long it took, whole seconds; empty where its start or the next was not noted, and for running back. */
    OptionalLong tookSeconds(Part part) {
        if (part == Part.RUN_BACK) {
            return OptionalLong.empty();
        }
        Long from = began(part);
        Long to = began(Part.values()[part.ordinal() + 1]);
        return from == null || to == null || to < from ? OptionalLong.empty() : OptionalLong.of((to - from) / 1000);
    }
}
