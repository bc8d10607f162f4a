package org.skeinday.motor;

import java.util.List;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * One measured hold: torque while the wound motor waits.
 *
 * @param bleed k of T(t) = T1 · (1 − k · log10(t / 1 s)): the share of T1 lost per decade of time; negative where it
 *     rose
 * @param torqueAtOneSecond the fitted T1
 */
public record Hold(double bleed, Torque torqueAtOneSecond) {
    /** Readings up to here after the last turn are left out: torque may creep up shortly after back-off. */
    public static final double SETTLING_SECONDS = 5;

    /** @param seconds since the last turn, above zero */
    public record Reading(double seconds, Torque torque) {
        public Reading {
            Preconditions.positive("Seconds since the last turn", seconds);
        }
    }

    /** @throws IllegalArgumentException below three readings later than 5 s, or when they fall to nothing */
    public static Hold of(List<Reading> readings) {
        List<Reading> late =
                readings.stream().filter(r -> r.seconds() > SETTLING_SECONDS).toList();
        StraightLine line = StraightLine.through(
                late.stream().mapToDouble(r -> Math.log10(r.seconds())).toArray(),
                late.stream().mapToDouble(r -> r.torque().newtonMillimetres()).toArray());
        Preconditions.positive("Torque at 1 s in N·mm", line.intercept());
        return new Hold(-line.slope() / line.intercept(), Torque.ofNewtonMillimetres(line.intercept()));
    }
}
