package org.skeinday.flight;

import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * A model that hovers, by momentum theory (W. J. M. Rankine 1865, R. E. Froude 1889; as in J. G. Leishman, Principles of
 * Helicopter Aerodynamics, §2.2): v = √(W/2ρA), P = κ·W·v/merit.
 *
 * @param inducedVelocityMetresPerSecond of the air through the discs
 * @param powerMilliwatts that the shaft takes
 * @param motorTurnsPerSecond at which the hook turns against the frame, above 0
 */
public record Hover(double inducedVelocityMetresPerSecond, double powerMilliwatts, double motorTurnsPerSecond) {
    private static final double STANDARD_GRAVITY = 9.80665;

    public Hover {
        Preconditions.positive("The induced velocity", inducedVelocityMetresPerSecond);
        Preconditions.positive("The hover power", powerMilliwatts);
        Preconditions.positive("The hover rate", motorTurnsPerSecond);
    }

    /** @param whole of the model with its motor, above 0 */
    public static Hover of(Mass whole, Rotors rotors, AirDensity air, double motorTurnsPerSecond) {
        double weight = Preconditions.above("The mass", whole.grams(), 0, "g") / 1000 * STANDARD_GRAVITY;
        double velocity = Math.sqrt(weight / (2 * air.kilogramsPerCubicMetre() * rotors.discAreaSquareMetres()));
        double watts = rotors.interference() * weight * velocity / rotors.merit();
        return new Hover(velocity, 1000 * watts, motorTurnsPerSecond);
    }

    /** Q = P/(2π·rate); milliwatts over turns a second are millinewton metres. */
    public Torque torque() {
        return Torque.ofMillinewtonMetres(powerMilliwatts / (2 * Math.PI * motorTurnsPerSecond));
    }
}
