package org.skeinday.motor;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.descriptive.rank.Percentile.EstimationType;
import org.skeinday.units.Preconditions;

/** Some numbers of one kind, in their own unit: middle, quantiles, and intervals that assume normal scatter. */
public final class Sample {
    private final double[] values;
    private final Resolution read;

    private Sample(double[] values, Resolution read) {
        this.values = values;
        this.read = read;
    }

    /** @param values finite, at least one */
    public static Sample of(double... values) {
        if (values.length == 0) {
            throw new IllegalArgumentException("A sample must have at least 1 value, but had none");
        }
        Arrays.stream(values).forEach(v -> Preconditions.finite("A value", v));
        return new Sample(values.clone(), Resolution.EXACT);
    }

    /** The same, known no finer than it was read: no interval is narrower than the step of reading leaves it. */
    public Sample readIn(Resolution step) {
        return new Sample(values, step);
    }

    public int size() {
        return values.length;
    }

    public double mean() {
        return Arrays.stream(values).sum() / values.length;
    }

    /** With n − 1 degrees of freedom; zero for a single value. */
    public double deviation() {
        double mean = mean();
        double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
        return values.length == 1 ? 0 : Math.sqrt(squares / (values.length - 1));
    }

    public double median() {
        return quantile(0.5);
    }

    /** Linear between the ordered values (type 7 of Hyndman and Fan, The American Statistician 50, 1996). */
    public double quantile(double share) {
        Preconditions.share("A quantile", share);
        return new Percentile(share * 100)
                .withEstimationType(EstimationType.R_7)
                .evaluate(values);
    }

    /** Where the mean lies; needs at least two values. */
    public Interval meanInterval(double confidence) {
        return around(confidence, 1.0 / values.length);
    }

    /** Where one further value will lie; needs at least two values. */
    public Interval predictionInterval(double confidence) {
        return around(confidence, 1 + 1.0 / values.length);
    }

    /** Values that one further one takes with equal chance: quantiles of where it will lie, the middles of {@code points} parts. */
    public List<Double> likely(int points) {
        return Likely.of(values.length - 1, mean(), scatter() * Math.sqrt(1 + 1.0 / values.length), points);
    }

    private double scatter() {
        return Math.max(deviation(), read.uniformDeviation());
    }

    private Interval around(double confidence, double variances) {
        if (values.length < 2) {
            throw new IllegalStateException("An interval needs at least 2 values, but there was 1");
        }
        Preconditions.share("Confidence", confidence);
        double t = new TDistribution(values.length - 1).inverseCumulativeProbability((1 + confidence) / 2);
        double half = t * scatter() * Math.sqrt(variances);
        return new Interval(mean() - half, mean() + half, confidence);
    }
}
