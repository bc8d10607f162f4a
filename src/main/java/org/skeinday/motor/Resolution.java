package org.skeinday.motor;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;
import org.skeinday.units.TorqueUnit;

/**
 * How finely something was read: the step between two readings that can be told apart, in the reading's own unit, 0 for a
 * number that is exact. What was read lies anywhere within one step with equal chance, so its standard deviation is
 * step/√12 (a rectangular distribution of half-width step/2: Guide to the expression of uncertainty in measurement, JCGM
 * 100:2008, 4.3.7). Nothing that is fitted to readings is finer than that.
 */
public record Resolution(double step) {
    public static final Resolution EXACT = new Resolution(0);

    /** More digits after the point nobody reads from a meter, a watch or a thermometer (own default). */
    public static final int MOST_DIGITS = 3;

    /** What the arithmetic of a change of units leaves, as a share. */
    private static final double HAIR = 1e-9;

    /** A needle between two divisions is read to tenths by eye (common practice). */
    public static final double BY_EYE = 0.1;

    public Resolution {
        Preconditions.zeroOrMore("A step of reading", step);
    }

    /** Of a meter. @param division from one mark to the next, above 0 */
    public static Resolution ofMeter(double division) {
        return new Resolution(Preconditions.positive("A division", division) * BY_EYE);
    }

    /**
     * Of numbers that were read alike and written with their digits: one in the last digit that any of them has. Exact where
     * none of them ends within {@link #MOST_DIGITS} digits after the point, as what was computed does not.
     */
    public static Resolution ofDigits(double... numbers) {
        return new Resolution(Arrays.stream(numbers)
                .flatMap(number -> step(number).stream())
                .min()
                .orElse(0));
    }

    /** Of torques in N·mm, by their digits in the unit of the meter from which they were read: that in which they end first. */
    public static Resolution ofTorques(double... nmm) {
        return new Resolution(Arrays.stream(nmm)
                .flatMap(
                        one -> Arrays.stream(TorqueUnit.values())
                                .flatMapToDouble(unit -> ofTorque(one, unit).stream())
                                .max()
                                .stream())
                .min()
                .orElse(0));
    }

    private static OptionalDouble ofTorque(double nmm, TorqueUnit unit) {
        double number = unit.number(Torque.ofNewtonMillimetres(nmm));
        OptionalDouble step = step(number);
        return step.isEmpty() ? step : OptionalDouble.of(step.getAsDouble() * nmm / number);
    }

    private static OptionalDouble step(double number) {
        double step = 1;
        for (int digits = 0; number != 0 && digits <= MOST_DIGITS; digits++) {
            double steps = number / step;
            if (Math.abs(steps - Math.rint(steps)) < HAIR * Math.max(1, Math.abs(steps))) {
                return OptionalDouble.of(step);
            }
            step /= 10;
        }
        return OptionalDouble.empty();
    }

    /** The coarser of two: more digits than the meter shows are no finer reading. */
    public Resolution orCoarser(Resolution other) {
        return step >= other.step ? this : other;
    }

    /** Standard deviation of a single reading by its resolution alone. */
    public double uniformDeviation() {
        return step / Math.sqrt(12);
    }
}
