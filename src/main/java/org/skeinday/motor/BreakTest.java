package org.skeinday.motor;

import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * A motor wound on purpose until it broke.
 *
 * @param motorTurns at the break, above zero
 * @param meterId the torque meter that showed {@code torque}; readings of two meters are not pooled
 */
public record BreakTest(String meterId, Length loop, Mass mass, double motorTurns, Torque torque) {
    public BreakTest {
        Preconditions.positive("Turns at the break", motorTurns);
    }

    /** K of N_b = K · L0^1.5 / m^0.5, L0 in inches and m in grams. */
    public double k() {
        return BreakingTurns.k(motorTurns, loop, mass);
    }

    public Section section() {
        return Section.of(mass, loop);
    }
}
