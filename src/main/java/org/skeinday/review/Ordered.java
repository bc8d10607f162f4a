package org.skeinday.review;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.skeinday.motor.Interval;
import org.skeinday.units.Preconditions;

/**
 * Numbers in order, from which an estimate and an interval are read off by rank: their median, and the k-th from either
 * end. What the numbers are (values, their Walsh averages, differences between two groups) makes the method; the tail
 * says how likely it is, without any effect, that so many of them lie on one side. Ties count against an effect, so that
 * the interval is rather too wide. Standard theory: M. Hollander and D. A. Wolfe, Nonparametric Statistical Methods.
 *
 * @param sorted rising
 * @param tail the chance that at most so many of the numbers lie on one given side of no effect; rising
 */
record Ordered(double[] sorted, IntToDoubleFunction tail) {
    static Ordered of(double[] numbers, IntToDoubleFunction tail) {
        double[] sorted = numbers.clone();
        Arrays.sort(sorted);
        return new Ordered(sorted, tail);
    }

    /**
     * Empty when there are too few numbers for an interval of this confidence.
     *
     * @param none the value that stands for no effect
     */
    Optional<Effect> effect(double confidence, double none) {
        Preconditions.share("Confidence", confidence);
        int k = rank((1 - confidence) / 2);
        return k == 0
                ? Optional.empty()
                : Optional.of(new Effect(
                        median(), new Interval(sorted[k - 1], sorted[sorted.length - k], confidence), chance(none)));
    }

    /** The largest k with P(at most k − 1) not above {@code most}; 0 when there is none. */
    private int rank(double most) {
        int low = 0;
        int high = sorted.length / 2;
        while (low < high) {
            int middle = (low + high + 1) / 2;
            if (tail.applyAsDouble(middle - 1) <= most * (1 + 1e-12)) { // 0.1 / 2 and 2 / 40 are the same
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    private double chance(double none) {
        int notAbove = (int) Arrays.stream(sorted).filter(d -> d <= none).count();
        int notBelow = (int) Arrays.stream(sorted).filter(d -> d >= none).count();
        return Math.min(1, 2 * tail.applyAsDouble(Math.min(notAbove, notBelow)));
    }

    double median() {
        int n = sorted.length;
        return (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }
}
