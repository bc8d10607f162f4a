package org.skeinday.review;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
import org.skeinday.motor.Interval;
import org.skeinday.motor.Resolution;
import org.skeinday.units.Preconditions;

/**
 * One slope through several groups that each have a level of their own, so that a difference between two models is not
 * taken for the effect of what was changed on either. Least squares about the groups' means with n − groups − 1 degrees
 * of freedom; of one group it is the usual straight line. Standard theory of the analysis of covariance.
 *
 * @param spread Σ(x − mean x)² within the groups, more than zero
 * @param n values in groups that say something
 */
record CommonSlope(double slope, double error, double spread, int n, int groups) {
    /** What was measured of one group; as many y as x. */
    record Group(double[] x, double[] y) {}

    /** Empty without a degree of freedom, or where x is the same within each group. */
    static Optional<CommonSlope> through(List<Group> all) {
        List<Group> groups = all.stream().filter(g -> g.x().length > 1).toList();
        int n = groups.stream().mapToInt(g -> g.x().length).sum();
        double xx = groups.stream().mapToDouble(g -> product(g.x(), g.x())).sum();
        if (n - groups.size() - 1 < 1 || xx <= 0) {
            return Optional.empty();
        }
        double xy = groups.stream().mapToDouble(g -> product(g.x(), g.y())).sum();
        double slope = xy / xx;
        double left = groups.stream().mapToDouble(g -> residuals(g, slope)).sum();
        double error = Math.sqrt(left / (n - groups.size() - 1) / xx);
        return Optional.of(new CommonSlope(slope, error, xx, n, groups.size()));
    }

    /** The same, known no finer than what was read: its error is not below what the steps of reading of both sides leave. */
    CommonSlope readIn(Resolution x, Resolution y) {
        double floor = Math.hypot(y.uniformDeviation(), slope * x.uniformDeviation()) / Math.sqrt(spread);
        return new CommonSlope(slope, Math.max(error, floor), spread, n, groups);
    }

    /** Σ (a − mean a)(b − mean b). */
    private static double product(double[] a, double[] b) {
        double meanA = mean(a);
        double meanB = mean(b);
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - meanA) * (b[i] - meanB);
        }
        return sum;
    }

    private static double residuals(Group g, double slope) {
        double meanX = mean(g.x());
        double meanY = mean(g.y());
        double sum = 0;
        for (int i = 0; i < g.x().length; i++) {
            double off = g.y()[i] - meanY - slope * (g.x()[i] - meanX);
            sum += off * off;
        }
        return sum;
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).sum() / values.length;
    }

    int freedom() {
        return n - groups - 1;
    }

    Effect effect(double confidence) {
        Preconditions.share("Confidence", confidence);
        var t = new TDistribution(freedom());
        double half = t.inverseCumulativeProbability((1 + confidence) / 2) * error;
        double chance = error > 0 ? 2 * t.cumulativeProbability(-Math.abs(slope) / error) : slope == 0 ? 1 : 0;
        return new Effect(slope, new Interval(slope - half, slope + half, confidence), chance);
    }
}
