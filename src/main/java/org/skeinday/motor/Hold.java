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
 * @param deviation standard deviation of the bleed: by the scatter about the line, and by the readings' resolution at
 *     least
 */
public record Hold(double bleed, Torque torqueAtOneSecond, double deviation) {
    /** Readings up to here after the last turn are left out: torque may creep up shortly after back-off. */
    public static final double SETTLING_SECONDS = 5;

    public static final int FEWEST_READINGS = 2;

    /** A share per decade: a bleed that is known no better than this says nothing, as it lies between 0.02 and 0.08. */
    public static final double MOST_DEVIATION = 0.05;

    /** @param seconds since the last turn, above zero @param resolution in N·mm */
    public record Reading(double seconds, Torque torque, Resolution resolution) {
        public Reading {
            Preconditions.positive("Seconds since the last turn", seconds);
        }

        /** Of a number without a meter: as exact as it stands. */
        public Reading(double seconds, Torque torque) {
            this(seconds, torque, Resolution.EXACT);
        }
    }

    /** Without any doubt of its own. */
    public Hold(double bleed, Torque torqueAtOneSecond) {
        this(bleed, torqueAtOneSecond, 0);
    }

    /**
     * The line of least squares through torque over the logarithm of time. Its error is the scatter's (n − 2 degrees of
     * freedom), but not below the uniform deviation of the readings.
     *
     * @throws IllegalArgumentException below two readings later than 5 s at different times, when they fall to nothing, or
     *     when they were read too coarsely for so short a hold
     */
    public static Hold of(List<Reading> readings) {
        List<Reading> late =
                readings.stream().filter(r -> r.seconds() > SETTLING_SECONDS).toList();
        Preconditions.atLeast("Readings later than 5 s", late.size(), FEWEST_READINGS);
        double meanX = late.stream().mapToDouble(Hold::x).average().orElseThrow();
        double meanY = late.stream().mapToDouble(Hold::y).average().orElseThrow();
        double spread = late.stream().mapToDouble(r -> square(x(r) - meanX)).sum();
        Preconditions.positive("The spread of the readings' times", spread);
        double slope =
                late.stream().mapToDouble(r -> (x(r) - meanX) * (y(r) - meanY)).sum() / spread;
        double intercept = meanY - slope * meanX;
        Preconditions.positive("Torque at 1 s in N·mm", intercept);
        double scatter = late.stream()
                .mapToDouble(r -> square(y(r) - intercept - slope * x(r)))
                .sum();
        double error = late.size() == 2 ? 0 : Math.sqrt(scatter / (late.size() - 2));
        double deviation = Math.max(error, floor(late)) / Math.sqrt(spread) / intercept;
        Preconditions.within("The deviation of the bleed", deviation, 0, MOST_DEVIATION);
        return new Hold(-slope / intercept, Torque.ofNewtonMillimetres(intercept), deviation);
    }

    /** Root of the mean square of what each reading is worth at best. */
    private static double floor(List<Reading> readings) {
        return Math.sqrt(readings.stream()
                .mapToDouble(r -> square(r.resolution().uniformDeviation()))
                .average()
                .orElse(0));
    }

    private static double x(Reading reading) {
        return Math.log10(reading.seconds());
    }

    private static double y(Reading reading) {
        return reading.torque().newtonMillimetres();
    }

    private static double square(double value) {
        return value * value;
    }
}
