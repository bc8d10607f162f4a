package org.skeinday.motor;

import java.util.Arrays;

/**
 * Limits of θ = ln H(x) for tests in which all motors broke or that ended with a break (complete and type II data). There
 * the distribution of θ̂ = β̂·ln(x/η̂) depends on θ alone: with shape and scale (k, e^u) fitted to a test of shape and
 * scale 1, θ̂ is k·(θ − u), so that a θ is contradicted by a θ̂ as often as u + θ̂/k lies beyond it. Inverting that
 * distribution is exact (D. R. Thoman, L. J. Bain, C. E. Antle, Technometrics 12, 1970; J. F. Lawless, Statistical Models
 * and Methods for Lifetime Data, 2nd ed., §5.1).
 */
final class ExactLimits {
    /** More of them take long to draw, and say the same as the likelihood. */
    static final int MOST_MOTORS = 60;

    private static final int DRAWS = 9999;

    private static final OfTests<ExactLimits> DRAWN = new OfTests<>(ExactLimits::new);

    private final double[] shapes;
    private final double[] logScales;

    private ExactLimits(int motors, int breaks) {
        WeibullFit[] fits = DrawnTests.of(motors, breaks, DRAWS);
        shapes = Arrays.stream(fits).mapToDouble(WeibullFit::shape).toArray();
        logScales = Arrays.stream(fits).mapToDouble(WeibullFit::logScale).toArray();
    }

    /** @param motors at most {@link #MOST_MOTORS} */
    static ExactLimits of(int motors, int breaks) {
        return DRAWN.of(motors, breaks);
    }

    /** The θ below which, with this confidence each, the true one does not lie, and above which. @param fitted θ̂ */
    double[] around(double fitted, double tail) {
        double[] thetas = new double[shapes.length];
        for (int i = 0; i < thetas.length; i++) {
            thetas[i] = logScales[i] + fitted / shapes[i];
        }
        Arrays.sort(thetas);
        int beyond = (int) Math.round(tail * (thetas.length + 1));
        return new double[] {thetas[beyond - 1], thetas[thetas.length - beyond]};
    }
}
