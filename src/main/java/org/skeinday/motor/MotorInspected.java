package org.skeinday.motor;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code motor.inspected}: how a motor was found, and where it is since.
 *
 * @param massG with rings and lubricant, as typed in {@code massTyped}; null when only its place changed
 * @param place team (with the team), in (handed in: nothing may be done to it) or back (given back)
 * @param atMs milliseconds since 1970 UTC, null when nobody noted it
 */
public record MotorInspected(
        String motorId,
        @Nullable Double massG,
        @Nullable String massTyped,
        String place,
        @Nullable Long atMs) {
    public static final List<String> PLACES = EnumWords.of(MotorPlace.class);

    public MotorInspected {
        Preconditions.oneOf("A motor's place", place, PLACES);
    }

    public MotorPlace motorPlace() {
        return EnumWords.parse("A motor's place", MotorPlace.class, place);
    }

    /** Handed in: nobody may wind, load or open it. */
    public boolean handedIn() {
        return motorPlace() == MotorPlace.IN;
    }
}
