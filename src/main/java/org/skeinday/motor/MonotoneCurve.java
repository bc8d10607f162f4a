package org.skeinday.motor;

import java.util.Arrays;
import java.util.List;
import org.skeinday.units.Preconditions;

/**
 * A smooth curve through points that rises where they rise, falls where they fall and never overshoots: piecewise
 * cubic Hermite interpolation with the slopes of F. N. Fritsch and J. Butland (SIAM J. Sci. Stat. Comput. 5, 1984).
 * No unit of its own. Defined only between the first and the last point: nothing is extrapolated.
 */
public final class MonotoneCurve {
    private final double[] x;
    private final double[] y;
    private final double[] slope;

    private MonotoneCurve(double[] x, double[] y) {
        this.x = x;
        this.y = y;
        this.slope = slopes(x, y);
    }

    /**
     * @param x finite, strictly increasing, at least two
     * @param y finite, as many
     */
    public static MonotoneCurve through(double[] x, double[] y) {
        if (x.length != y.length || x.length < 2) {
            throw new IllegalArgumentException(
                    "A curve must have at least 2 points, x and y alike, but had " + x.length + " and " + y.length);
        }
        for (int i = 0; i < x.length; i++) {
            Preconditions.finite("A point's x", x[i]);
            Preconditions.finite("A point's y", y[i]);
            if (i > 0 && x[i] <= x[i - 1]) {
                throw new IllegalArgumentException(
                        "A curve's x must increase strictly, but " + x[i] + " follows " + x[i - 1]);
            }
        }
        return new MonotoneCurve(x.clone(), y.clone());
    }

    public double first() {
        return x[0];
    }

    public double last() {
        return x[x.length - 1];
    }

    public boolean covers(double at) {
        return at >= first() && at <= last();
    }

    /** The x of those points that lie strictly between, rising. */
    List<Double> pointsBetween(double from, double to) {
        return Arrays.stream(x).filter(at -> at > from && at < to).boxed().toList();
    }

    /** @throws IllegalArgumentException outside the points */
    public double at(double at) {
        int k = segment(at);
        double h = x[k + 1] - x[k];
        double s = (at - x[k]) / h;
        double r = 1 - s;
        return y[k] * (1 + 2 * s) * r * r
                + h * slope[k] * s * r * r
                + y[k + 1] * s * s * (3 - 2 * s)
                - h * slope[k + 1] * s * s * r;
    }

    /** The exact integral of the interpolating cubics; negative when {@code to} lies before {@code from}. */
    public double integral(double from, double to) {
        return upTo(to) - upTo(from);
    }

    private double upTo(double at) {
        int end = segment(at);
        double sum = 0;
        for (int k = 0; k < end; k++) {
            sum += part(k, 1);
        }
        return sum + part(end, (at - x[end]) / (x[end + 1] - x[end]));
    }

    /** Integral over the first share s of segment k: the antiderivatives of the four Hermite polynomials. */
    private double part(int k, double s) {
        double h = x[k + 1] - x[k];
        double s2 = s * s;
        double s3 = s2 * s;
        double s4 = s3 * s;
        return h
                * (y[k] * (s - s3 + s4 / 2)
                        + h * slope[k] * (s2 / 2 - 2 * s3 / 3 + s4 / 4)
                        + y[k + 1] * (s3 - s4 / 2)
                        + h * slope[k + 1] * (s4 / 4 - s3 / 3));
    }

    private int segment(double at) {
        if (!covers(at)) {
            throw new IllegalArgumentException(
                    "The curve is known from " + first() + " to " + last() + ", but was asked at " + at);
        }
        int found = Arrays.binarySearch(x, at);
        int k = found >= 0 ? found : -found - 2;
        return Math.min(k, x.length - 2);
    }

    private static double[] slopes(double[] x, double[] y) {
        int n = x.length;
        double[] h = new double[n - 1];
        double[] m = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            h[i] = x[i + 1] - x[i];
            m[i] = (y[i + 1] - y[i]) / h[i];
        }
        double[] d = new double[n];
        if (n == 2) {
            Arrays.fill(d, m[0]);
            return d;
        }
        for (int i = 1; i < n - 1; i++) {
            d[i] = inner(h[i - 1], h[i], m[i - 1], m[i]);
        }
        d[0] = edge(h[0], h[1], m[0], m[1]);
        d[n - 1] = edge(h[n - 2], h[n - 3], m[n - 2], m[n - 3]);
        return d;
    }

    /** The weighted harmonic mean, and level where the points turn round. */
    private static double inner(double h0, double h1, double m0, double m1) {
        if (m0 * m1 <= 0) {
            return 0;
        }
        double w0 = 2 * h1 + h0;
        double w1 = h1 + 2 * h0;
        return (w0 + w1) / (w0 / m0 + w1 / m1);
    }

    /** The three-point slope, held back so that the end keeps its direction. */
    private static double edge(double h0, double h1, double m0, double m1) {
        double d = ((2 * h0 + h1) * m0 - h0 * m1) / (h0 + h1);
        if (Math.signum(d) != Math.signum(m0)) {
            return 0;
        }
        boolean turns = Math.signum(m0) != Math.signum(m1);
        return turns && Math.abs(d) > 3 * Math.abs(m0) ? 3 * m0 : d;
    }
}
