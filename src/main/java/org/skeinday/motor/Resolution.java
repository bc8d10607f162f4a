package org.skeinday.motor;

import org.skeinday.units.Preconditions;

/**
 * How finely something was read: the step between two readings that can be told apart, in the reading's own unit, 0 for a
 * number that is exact. What was read lies anywhere within one step with equal chance, so its standard deviation is
 * step/√12 (a rectangular distribution of half-width step/2: Guide to the expression of uncertainty in measurement, JCGM
 * 100:2008, 4.3.7). Nothing that is fitted to readings is finer than that.
 */
public record Resolution(double step) {
    public static final Resolution EXACT = new Resolution(0);

    /** A needle between two divisions is read to tenths by eye (common practice). */
    public static final double BY_EYE = 0.1;

    public Resolution {
        Preconditions.zeroOrMore("A step of reading", step);
    }

    /** Of a meter. @param division from one mark to the next, above 0 */
    public static Resolution ofMeter(double division) {
        return new Resolution(Preconditions.positive("A division", division) * BY_EYE);
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
