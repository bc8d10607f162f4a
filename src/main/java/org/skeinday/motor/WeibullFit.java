package org.skeinday.motor;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.skeinday.units.Preconditions;

/**
 * Two-parameter Weibull by maximum likelihood with right-censoring; F(x) = 1 − exp(−(x/scale)^shape). Standard theory:
 * NIST/SEMATECH e-Handbook 8.4.1. Intervals are those of the profile likelihood in θ = ln H(x), the logarithm of the
 * cumulative hazard: the likelihood is jointly concave in shape and θ, so each search has one answer.
 */
final class WeibullFit {
    private static final double LEAST = Math.log(1e-6); // logarithms of shapes
    private static final double LARGEST = Math.log(1e6);

    static final double CONFIDENCE = 0.90;
    static final double TAIL = (1 - CONFIDENCE) / 2;

    private final double[] logs;
    private final boolean endsWithABreak;
    private final int breaks;
    private final double sumOfBrokenLogs;
    private final double shape;
    private final double logScale;
    private final double largest; // log-likelihood, but for a constant

    private WeibullFit(double[] x, boolean[] broke) {
        logs = java.util.Arrays.stream(x).map(Math::log).toArray();
        breaks = (int) IntStream.range(0, x.length).filter(i -> broke[i]).count();
        sumOfBrokenLogs = IntStream.range(0, x.length)
                .filter(i -> broke[i])
                .mapToDouble(i -> logs[i])
                .sum();
        double top = java.util.Arrays.stream(logs).max().orElseThrow();
        endsWithABreak = IntStream.range(0, x.length).allMatch(i -> broke[i] || logs[i] == top)
                && IntStream.range(0, x.length).anyMatch(i -> broke[i] && logs[i] == top);
        shape = Math.exp(RisingZero.of((v, f) -> shapeEquation(Math.exp(v), top, f), LEAST, LARGEST, 0));
        logScale = top + Math.log(powers(shape, top) / breaks) / shape;
        largest = breaks * (Math.log(shape) - shape * logScale) + shape * sumOfBrokenLogs - breaks;
    }

    /**
     * @param x above zero
     * @throws IllegalArgumentException where no finite maximum exists
     */
    static WeibullFit of(double[] x, boolean[] broke) {
        if (x.length != broke.length || !hasMaximum(x, broke)) {
            throw new IllegalArgumentException(
                    "A fit must have breaks that do not all lie at the largest value, but had " + x.length + " values");
        }
        for (double value : x) {
            Preconditions.positive("A value", value);
        }
        return new WeibullFit(x, broke);
    }

    /** False without breaks, and when all breaks lie together at the largest value: the shape would have no bound. */
    static boolean hasMaximum(double[] x, boolean[] broke) {
        double top = java.util.Arrays.stream(x).max().orElse(0);
        return IntStream.range(0, x.length).anyMatch(i -> broke[i] && x[i] < top);
    }

    double shape() {
        return shape;
    }

    double scale() {
        return Math.exp(logScale);
    }

    double logScale() {
        return logScale;
    }

    double probability(double x) {
        return probabilityOf(logHazard(Math.log(x)));
    }

    /** Where the likelihood, at its largest for each risk, is no less than the χ² of one degree of freedom allows. */
    Interval probabilityInterval(double x, double confidence) {
        double drop = new ChiSquaredDistribution(1).inverseCumulativeProbability(confidence) / 2;
        return interval(Math.log(x), confidence, theta -> drop, theta -> drop);
    }

    /**
     * With limits that hold for few breaks too: exact where all broke or the test ended with a break, else by how far the
     * likelihood strays in such tests.
     */
    Interval calibratedInterval(double x) {
        double logX = Math.log(x);
        if (endsWithABreak && logs.length <= ExactLimits.MOST_MOTORS) {
            double[] thetas = ExactLimits.of(logs.length, breaks).around(logHazard(logX), TAIL);
            return new Interval(probabilityOf(thetas[0]), probabilityOf(thetas[1]), CONFIDENCE);
        }
        RootQuantiles limits = RootQuantiles.of(logs.length, breaks);
        return interval(logX, CONFIDENCE, theta -> half(limits.upper(theta)), theta -> half(limits.lower(theta)));
    }

    private static double half(double root) {
        return root * root / 2;
    }

    /** @param dropBelow by how much the log-likelihood may fall at a θ below the best one, {@code dropAbove} above it */
    private Interval interval(
            double logX, double confidence, DoubleUnaryOperator dropBelow, DoubleUnaryOperator dropAbove) {
        double best = logHazard(logX);
        DoubleUnaryOperator below = theta -> profile(theta, logX) - largest + dropBelow.applyAsDouble(theta);
        DoubleUnaryOperator above = theta -> profile(theta, logX) - largest + dropAbove.applyAsDouble(theta);
        double low = rising(below, beyond(below, best, -1), best);
        double high = -rising(theta -> above.applyAsDouble(-theta), -beyond(above, best, 1), -best);
        return new Interval(probabilityOf(low), probabilityOf(high), confidence);
    }

    /**
     * The signed root of twice what the log-likelihood loses when ln H(x) is held at θ: above zero where the fit has more,
     * and of nearly normal distribution where θ is true.
     */
    double signedRoot(double logX, double theta) {
        return Math.signum(logHazard(logX) - theta) * Math.sqrt(Math.max(0, 2 * (largest - profile(theta, logX))));
    }

    private double logHazard(double logX) {
        return shape * (logX - logScale);
    }

    private static double probabilityOf(double logHazard) {
        return -Math.expm1(-Math.exp(logHazard));
    }

    /** Zero at the most likely shape and rising; powers are taken relative to the largest value, against overflow. */
    private void shapeEquation(double k, double top, double[] f) {
        double sum = 0;
        double first = 0;
        double second = 0;
        for (double log : logs) {
            double power = Math.exp(k * (log - top));
            sum += power;
            first += log * power;
            second += (log - top) * (log - top) * power;
        }
        double mean = first / sum;
        f[0] = mean - 1 / k - sumOfBrokenLogs / breaks;
        f[1] = k * (second / sum - (mean - top) * (mean - top)) + 1 / k;
    }

    private double powers(double k, double top) {
        double sum = 0;
        for (double log : logs) {
            sum += Math.exp(k * (log - top));
        }
        return sum;
    }

    /** The largest log-likelihood, but for a constant, with θ held fixed. */
    private double profile(double theta, double logX) {
        double near = theta / (logX - logScale); // the shape that keeps the scale
        double start = Math.log(Math.abs(theta) > 2 && near > 0 ? near : shape);
        double k = Math.exp(RisingZero.of((v, f) -> slope(Math.exp(v), theta, logX, f), LEAST, LARGEST, start));
        double hazards = 0;
        for (double log : logs) {
            hazards += Math.exp(k * (log - logX) + theta);
        }
        return breaks * (Math.log(k) + theta) + k * (sumOfBrokenLogs - breaks * logX) - hazards;
    }

    /** Falling in the shape: its negative rises. */
    private void slope(double k, double theta, double logX, double[] f) {
        double sum = breaks / k + sumOfBrokenLogs - breaks * logX;
        double steeper = breaks / k;
        for (double log : logs) {
            double beyond = log - logX;
            double hazard = Math.exp(k * beyond + theta);
            sum -= beyond * hazard;
            steeper += k * beyond * beyond * hazard;
        }
        f[0] = -sum;
        f[1] = steeper;
    }

    /** A θ on that side where the profile lies below the floor. */
    private static double beyond(DoubleUnaryOperator above, double best, int side) {
        double step = 1;
        while (above.applyAsDouble(best + side * step) > 0 && step < 1e6) {
            step *= 2;
        }
        return best + side * step;
    }

    /** Bisection for the zero of a function that rises from below zero to above it. */
    private static double rising(DoubleUnaryOperator f, double low, double high) {
        double a = low;
        double b = high;
        for (int i = 0; i < 80 && b - a > 1e-13 * Math.max(1, Math.abs(a)); i++) {
            double middle = (a + b) / 2;
            if (f.applyAsDouble(middle) < 0) {
                a = middle;
            } else {
                b = middle;
            }
        }
        return (a + b) / 2;
    }
}
