package org.skeinday.motor;

import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;

/**
 * One wind as evidence of strength.
 *
 * @param motorId whose wind it was
 * @param normalisedTurns motor turns · m^0.5 / L0^1.5 with L0 in inches and m in grams (K's unit), above zero: those at
 *     the break, or those reached unbroken
 * @param stopRule set before winding
 */
public record BreakTrial(String motorId, double normalisedTurns, StopRule stopRule, boolean broke) {
    public BreakTrial {
        Preconditions.positive("Normalised turns", normalisedTurns);
    }

    public static BreakTrial of(
            String motorId, double motorTurns, Length loop, Mass mass, StopRule stopRule, boolean broke) {
        return new BreakTrial(motorId, BreakingTurns.k(motorTurns, loop, mass), stopRule, broke);
    }
}
