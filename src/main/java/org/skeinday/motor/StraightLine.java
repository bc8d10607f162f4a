package org.skeinday.motor;

import org.hipparchus.distribution.continuous.TDistribution;

/**
 * The straight line of least squares through at least three points, with the usual errors and intervals of independent,
 * normal scatter about it. No unit of its own. Standard theory: for example D. S. Moore and G. P. McCabe, Introduction
 * to the Practice of Statistics, ch. 10.
 *
 * @param residualError standard deviation about the line, n − 2 degrees of freedom
 * @param spread Σ(x − mean x)², more than zero
 */
public record StraightLine(
        int n, double slope, double intercept, double rSquared, double residualError, double meanX, double spread) {

    /** @throws IllegalArgumentException below three points, or when all x are alike */
    public static StraightLine through(double[] x, double[] y) {
        if (x.length != y.length || x.length < 3) {
            throw new IllegalArgumentException(
                    "A line needs at least 3 points, x and y alike, but had " + x.length + " and " + y.length);
        }
        double meanX = mean("x", x);
        double meanY = mean("y", y);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int i = 0; i < x.length; i++) {
            xx += (x[i] - meanX) * (x[i] - meanX);
            xy += (x[i] - meanX) * (y[i] - meanY);
            yy += (y[i] - meanY) * (y[i] - meanY);
        }
        if (xx <= 0) {
            throw new IllegalArgumentException("A line needs at least 2 different x, but all were " + x[0]);
        }
        double slope = xy / xx;
        double residual = 0;
        for (int i = 0; i < x.length; i++) {
            double miss = y[i] - meanY - slope * (x[i] - meanX);
            residual += miss * miss;
        }
        double rSquared = yy == 0 ? 1 : 1 - residual / yy;
        double error = Math.sqrt(residual / (x.length - 2));
        return new StraightLine(x.length, slope, meanY - slope * meanX, rSquared, error, meanX, xx);
    }

    public double at(double x) {
        return intercept + slope * x;
    }

    public double slopeError() {
        return residualError / Math.sqrt(spread);
    }

    public double interceptError() {
        return residualError * Math.sqrt(1.0 / n + meanX * meanX / spread);
    }

    public Interval slopeInterval(double confidence) {
        double half = t(confidence) * slopeError();
        return new Interval(slope - half, slope + half, confidence);
    }

    /** Where one further y at this x will lie. */
    public Interval predictionInterval(double x, double confidence) {
        double away = x - meanX;
        double half = t(confidence) * residualError * Math.sqrt(1 + 1.0 / n + away * away / spread);
        return new Interval(at(x) - half, at(x) + half, confidence);
    }

    private double t(double confidence) {
        Check.share("Confidence", confidence);
        return new TDistribution(n - 2).inverseCumulativeProbability((1 + confidence) / 2);
    }

    private static double mean(String what, double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += Check.finite(what, value);
        }
        return sum / values.length;
    }
}
