package org.skeinday.motor;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.regression.SimpleRegression;
import org.skeinday.units.Preconditions;

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
                    "A line must have at least 3 points, x and y alike, but had " + x.length + " and " + y.length);
        }
        SimpleRegression line = new SimpleRegression();
        for (int i = 0; i < x.length; i++) {
            line.addData(Preconditions.finite("x", x[i]), Preconditions.finite("y", y[i]));
        }
        if (line.getXSumSquares() <= 0) {
            throw new IllegalArgumentException("A line must have at least 2 different x, but all were " + x[0]);
        }
        double rSquared = line.getTotalSumSquares() == 0 ? 1 : line.getRSquare();
        return new StraightLine(
                x.length,
                line.getSlope(),
                line.getIntercept(),
                rSquared,
                Math.sqrt(line.getMeanSquareError()),
                Arrays.stream(x).sum() / x.length,
                line.getXSumSquares());
    }

    /**
     * The same, known no finer than what was read: the scatter about it is not below what the steps of reading of both sides
     * leave.
     */
    public StraightLine readIn(Resolution x, Resolution y) {
        double floor = Math.hypot(y.uniformDeviation(), slope * x.uniformDeviation());
        return new StraightLine(n, slope, intercept, rSquared, Math.max(residualError, floor), meanX, spread);
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

    /** Values that one further y at this x takes with equal chance, as {@link Sample#likely}. */
    public List<Double> likely(double x, int points) {
        double away = x - meanX;
        double scale = residualError * Math.sqrt(1 + 1.0 / n + away * away / spread);
        return Likely.of(n - 2, at(x), scale, points);
    }

    private double t(double confidence) {
        Preconditions.share("Confidence", confidence);
        return new TDistribution(n - 2).inverseCumulativeProbability((1 + confidence) / 2);
    }
}
