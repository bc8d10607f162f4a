package org.skeinday.motor;

import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * What the torque meter showed at a number of turns in the motor.
 *
 * @param motorTurns turns in the motor at that moment, zero or more
 */
public record TorqueReading(double motorTurns, Torque torque) {
    public TorqueReading {
        Preconditions.zeroOrMore("Motor turns", motorTurns);
    }
}
