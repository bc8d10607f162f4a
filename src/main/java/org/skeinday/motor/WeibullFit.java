package org.skeinday.motor;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.skeinday.units.Preconditions;

/**
 * Two-parameter Weibull by maximum likelihood with right-censoring; F(x) = 1 − exp(−(x/scale)^shape). Standard theory:
 * NIST/SEMATECH e-Handbook 8.4.1. The interval is that of the profile likelihood in θ = ln H(x), the logarithm of the
 * cumulative hazard: the likelihood is jointly concave in shape and θ, so each search has one answer.
 */
final class WeibullFit {
    private static final double LEAST_SHAPE = 1e-6;
    private static final double LARGEST_SHAPE = 1e6;

    private final double[] logs;
    private final int breaks;
    private final double sumOfBrokenLogs;
    private final double shape;
    private final double logScale;

    private WeibullFit(double[] x, boolean[] broke) {
        logs = java.util.Arrays.stream(x).map(Math::log).toArray();
        breaks = (int) IntStream.range(0, x.length).filter(i -> broke[i]).count();
        sumOfBrokenLogs = IntStream.range(0, x.length)
                .filter(i -> broke[i])
                .mapToDouble(i -> logs[i])
                .sum();
        double top = java.util.Arrays.stream(logs).max().orElseThrow();
        shape = Math.exp(rising(k -> shapeEquation(Math.exp(k), top), Math.log(LEAST_SHAPE), Math.log(LARGEST_SHAPE)));
        logScale = top + Math.log(powers(shape, top) / breaks) / shape;
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

    double probability(double x) {
        return probabilityOf(logHazard(x));
    }

    Interval probabilityInterval(double x, double confidence) {
        double drop = new ChiSquaredDistribution(1).inverseCumulativeProbability(confidence) / 2;
        double logX = Math.log(x);
        double best = logHazard(x);
        double floor = profile(best, logX) - drop;
        DoubleUnaryOperator above = theta -> profile(theta, logX) - floor;
        double low = rising(above, beyond(above, best, -1), best);
        double high = -rising(theta -> above.applyAsDouble(-theta), -beyond(above, best, 1), -best);
        return new Interval(probabilityOf(low), probabilityOf(high), confidence);
    }

    private double logHazard(double x) {
        return shape * (Math.log(x) - logScale);
    }

    private static double probabilityOf(double logHazard) {
        return -Math.expm1(-Math.exp(logHazard));
    }

    /** Zero at the most likely shape and rising; powers are taken relative to the largest value, against overflow. */
    private double shapeEquation(double k, double top) {
        double weighted = 0;
        for (double log : logs) {
            weighted += log * Math.exp(k * (log - top));
        }
        return weighted / powers(k, top) - 1 / k - sumOfBrokenLogs / breaks;
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
        double k =
                Math.exp(rising(v -> -slope(Math.exp(v), theta, logX), Math.log(LEAST_SHAPE), Math.log(LARGEST_SHAPE)));
        double hazards = 0;
        for (double log : logs) {
            hazards += Math.exp(k * (log - logX) + theta);
        }
        return breaks * (Math.log(k) + theta) + k * (sumOfBrokenLogs - breaks * logX) - hazards;
    }

    private double slope(double k, double theta, double logX) {
        double sum = breaks / k + sumOfBrokenLogs - breaks * logX;
        for (double log : logs) {
            sum -= (log - logX) * Math.exp(k * (log - logX) + theta);
        }
        return sum;
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
