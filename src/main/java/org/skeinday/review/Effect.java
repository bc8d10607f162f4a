package org.skeinday.review;

import org.skeinday.motor.Interval;
import org.skeinday.units.Preconditions;

/**
 * How large something is, with its uncertainty, in the unit of whoever asked.
 *
 * @param value the estimate
 * @param interval around it; where only so many values were there, it holds the truth at least as often as it says
 * @param chance that values without any effect lie at least so far off, on either side: above 0 in theory, 0 to 1
 */
public record Effect(double value, Interval interval, double chance) {
    public Effect {
        Preconditions.finite("An effect", value);
        Preconditions.withinIfKnown("The chance", chance, 0, 1);
    }

    /** No surer than the values it rests on were read. @param half least half-width of the interval, 0 or more */
    Effect notSurerThan(double half) {
        return new Effect(
                value,
                new Interval(
                        Math.min(interval.low(), value - half),
                        Math.max(interval.high(), value + half),
                        interval.confidence()),
                chance);
    }

    /** In another unit. @param factor not zero; below zero turns it round */
    Effect times(double factor) {
        double one = interval.low() * factor;
        double other = interval.high() * factor;
        return new Effect(
                value * factor,
                new Interval(Math.min(one, other), Math.max(one, other), interval.confidence()),
                chance);
    }

    /** A difference of natural logarithms as a ratio. */
    Effect asRatio() {
        return new Effect(
                Math.exp(value),
                new Interval(Math.exp(interval.low()), Math.exp(interval.high()), interval.confidence()),
                chance);
    }
}
