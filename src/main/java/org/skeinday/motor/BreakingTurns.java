package org.skeinday.motor;

import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;

/**
 * Breaking turns from length and mass: N_b = K · L^1.5 / m^0.5 with L in inches and m in grams. Empirical, per batch;
 * published values of K run from 41.5 to 45.7.
 */
public final class BreakingTurns {
    private BreakingTurns() {}

    /** Motor turns at which a motor of this loop and mass breaks, for a batch's K (above zero). */
    public static double of(double k, Length loop, Mass mass) {
        Preconditions.positive("K", k);
        return k * shape(loop, mass);
    }

    /** K of a batch from one motor wound to breaking. */
    public static double k(double breakingMotorTurns, Length loop, Mass mass) {
        Preconditions.positive("Breaking turns", breakingMotorTurns);
        return breakingMotorTurns / shape(loop, mass);
    }

    /** K that these turns would have were the motor to break at them. @param motorTurns zero or more */
    static double normalised(double motorTurns, Length loop, Mass mass) {
        Preconditions.zeroOrMore("Motor turns", motorTurns);
        return motorTurns / shape(loop, mass);
    }

    /** The turns of a motor of this size at {@link #normalised} ones. @param normalised zero or more */
    static double turns(double normalised, Length loop, Mass mass) {
        Preconditions.zeroOrMore("Normalised turns", normalised);
        return normalised * shape(loop, mass);
    }

    private static double shape(Length loop, Mass mass) {
        Preconditions.positive("The loop's length", loop.millimetres());
        Preconditions.positive("The motor's mass", mass.grams());
        return Math.pow(loop.inches(), 1.5) / Math.sqrt(mass.grams());
    }
}
