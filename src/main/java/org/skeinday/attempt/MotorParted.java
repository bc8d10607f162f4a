package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BreakPlace;

/**
 * Fact {@code attempt.parted}: where a motor of this attempt parted, as somebody saw it; a later one stands in its place.
 *
 * @param place a word of {@link BreakPlace}
 */
public record MotorParted(
        String attemptId,
        String motorId,
        String place,
        long atMs,
        @Nullable String personId,
        String device) {
    public MotorParted {
        BreakPlace.of(place);
    }
}
