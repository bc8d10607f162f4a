package org.skeinday.motor;

import java.util.List;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;

/** Torque while a motor ran down at fixed length: the only source of its energy and of a launch torque. */
public record UnwindingCurve(TorqueCurve curve) {
    /** A pound-force foot per pound is this many J/kg: 0.3048 m × 9.80665 m/s², from the definitions. */
    private static final double JOULES_PER_KILOGRAM_OF_FOOT_POUNDS_PER_POUND = 0.3048 * 9.80665;

    public static UnwindingCurve of(List<TorqueReading> readings) {
        return new UnwindingCurve(TorqueCurve.of(readings));
    }

    /** Energy given back over the whole curve, in millijoules. */
    public double energyMillijoules() {
        return curve.workMillijoules(curve.firstMotorTurns(), curve.lastMotorTurns());
    }

    /** Energy given back between two numbers of turns in the motor, in millijoules, whichever is the larger. */
    public double energyMillijoules(double fromTurns, double toTurns) {
        return Math.abs(curve.workMillijoules(fromTurns, toTurns));
    }

    /** Energy per mass of rubber; mJ/g is J/kg. */
    public double specificEnergyJoulesPerKilogram(Mass rubber) {
        return energyMillijoules() / Preconditions.positive("The motor's mass in grams", rubber.grams());
    }

    public static double footPoundsPerPound(double joulesPerKilogram) {
        return joulesPerKilogram / JOULES_PER_KILOGRAM_OF_FOOT_POUNDS_PER_POUND;
    }
}
