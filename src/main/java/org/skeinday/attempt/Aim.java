package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.motor.Ceiling;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Level;

/**
 * What a wind is to end at, and what is to be left in it.
 *
 * @param launch torque wanted after the back-off, null when nobody said
 * @param level of whoever winds
 */
public record Aim(Ceiling ceiling, @Nullable Torque launch, Level level) {
    /** Of a wind without an attempt: stopped at the count. */
    public static Aim practice() {
        return new Aim(new Ceiling.NotKnown("practice: the turns limit ends the wind"), null, Level.PRACTISED);
    }

    /** Null while the ceiling is not known. */
    public @Nullable Torque ceilingTorque() {
        return switch (ceiling.kind()) {
            case TYPED -> ((Ceiling.Typed) ceiling).torque();
            case FROM_BREAK_TESTS -> ((Ceiling.FromBreakTests) ceiling).torque();
            case NOT_KNOWN -> null;
        };
    }

    /** As a line of a plan has it. */
    public String ceilingWords(UnitSystem units) {
        return switch (ceiling.kind()) {
            case TYPED -> units.torque(((Ceiling.Typed) ceiling).torque());
            case FROM_BREAK_TESTS -> {
                var found = (Ceiling.FromBreakTests) ceiling;
                yield units.torque(found.torque()) + ", from " + found.tests() + " break test"
                        + (found.tests() == 1 ? "" : "s");
            }
            case NOT_KNOWN -> "not known: the turns limit ends the wind";
        };
    }

    public String launchWords(UnitSystem units) {
        return launch == null ? "not set" : units.torque(launch);
    }
}
