package org.skeinday.review;

import java.time.LocalDate;
import java.util.Optional;
import org.skeinday.motor.Section;
import org.skeinday.motor.TorqueCurve;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * Torque of one wind at a share of the motor's breaking turns, as a section of 1 mm² would have it: torque goes with
 * A^1.5 at the same share (empirical).
 *
 * @param id of the flight, else of the wind
 * @param nmm N·mm for 1 mm², above 0
 */
public record TorqueAtShare(String id, Named motor, Named batch, String meter, LocalDate day, double nmm) {
    /** At which winds are compared where nobody says otherwise: reached by nearly every wind (own default). */
    public static final double DEFAULT_SHARE = 0.70;

    public TorqueAtShare {
        Preconditions.withinIfKnown("The torque for 1 mm² in N·mm", nmm, Double.MIN_VALUE, 10_000);
    }

    /** How large the motor is, and when it breaks in the median: motor turns above 0. */
    public record Size(Length loop, Mass mass, double breakingTurns) {}

    /** Empty where the readings do not reach: nothing is extrapolated. @param winding a winding curve, of one meter */
    public static Optional<Double> at(double share, TorqueCurve winding, Size size) {
        Preconditions.share("The share of breaking turns", share);
        double turns = share * size.breakingTurns();
        if (!winding.covers(turns)) {
            return Optional.empty();
        }
        Torque scaled = new Section(1).scaled(winding.at(turns), Section.of(size.mass(), size.loop()));
        return scaled.newtonMillimetres() > 0 ? Optional.of(scaled.newtonMillimetres()) : Optional.empty();
    }
}
