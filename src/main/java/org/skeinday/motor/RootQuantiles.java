package org.skeinday.motor;

import java.util.Arrays;
import java.util.Comparator;

/**
 * How far the signed root of the likelihood ({@link WeibullFit#signedRoot}) strays when its θ = ln H(x) is the true one, in
 * place of the normal distribution that it has with many breaks: with 5 to 15 motors an interval by that covers 75 to
 * 89 % where it says 90 %. Drawn of tests that end with a break, at each θ; where winds were stopped by count it is a
 * close approximation, since the likelihood itself knows where they were stopped (simulated distribution of the signed
 * root: S.-L. Jeng, W. Q. Meeker, Technometrics 42, 2000).
 */
final class RootQuantiles {
    private static final int DRAWS = 3999; // each is fitted anew at every θ

    /** Beyond these the limits hardly change, and drawing them takes long; between them the nearest one serves. */
    private static final int[] BREAKS = {2, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20};

    /** Motors to a break, as {@link #BREAKS}. */
    private static final double[] MOTORS_TO_A_BREAK = {1, 1.5, 2, 3};

    /** The θ for which it is drawn; between them it is straight, beyond them level. */
    private static final double[] THETAS = {-50, -15, -8, -5, -3.5, -2.5, -1.5, -0.75, 0, 0.75, 2, 5};

    private static final OfTests<RootQuantiles> DRAWN = new OfTests<>(RootQuantiles::new);

    private final double[] lower = new double[THETAS.length];
    private final double[] upper = new double[THETAS.length];

    private RootQuantiles(int motors, int breaks) {
        WeibullFit[] fits = DrawnTests.of(motors, breaks, DRAWS);
        for (int i = 0; i < THETAS.length; i++) {
            double theta = THETAS[i];
            double[] roots = Arrays.stream(fits)
                    .mapToDouble(fit -> fit.signedRoot(theta, theta)) // shape and scale are 1
                    .sorted()
                    .toArray();
            int beyond = (int) Math.round(WeibullFit.TAIL * (roots.length + 1));
            lower[i] = roots[beyond - 1];
            upper[i] = roots[roots.length - beyond];
        }
    }

    /** @param breaks 2 at least, no more than {@code motors} */
    static RootQuantiles of(int motors, int breaks) {
        int like = (int) nearest(Arrays.stream(BREAKS).asDoubleStream().toArray(), breaks);
        double toABreak = nearest(MOTORS_TO_A_BREAK, (double) motors / breaks);
        return DRAWN.of((int) Math.round(like * toABreak), like);
    }

    private static double nearest(double[] steps, double value) {
        return Arrays.stream(steps)
                .boxed()
                .min(Comparator.comparingDouble(step -> Math.abs(step - value)))
                .orElseThrow();
    }

    /** The root is below it in 5 % of tests. */
    double lower(double theta) {
        return between(lower, theta);
    }

    /** The root is above it in 5 % of tests. */
    double upper(double theta) {
        return between(upper, theta);
    }

    private static double between(double[] values, double theta) {
        int above = Arrays.binarySearch(THETAS, theta);
        if (above >= 0) {
            return values[above];
        }
        int next = -above - 1;
        if (next == 0 || next == THETAS.length) {
            return values[Math.min(next, THETAS.length - 1)];
        }
        double share = (theta - THETAS[next - 1]) / (THETAS[next] - THETAS[next - 1]);
        return values[next - 1] + share * (values[next] - values[next - 1]);
    }
}
