package org.skeinday.motor;

/** Where a function that rises from below zero to above it is zero: Newton's steps, and halves where one leaves the bracket. */
final class RisingZero {
    private static final int MOST_STEPS = 120;
    private static final double CLOSE = 1e-13;

    private RisingZero() {}

    /** Value and slope of the function at a place. */
    interface Function {
        void at(double place, double[] valueAndSlope);
    }

    /** @param start anywhere; outside the bracket the middle is taken */
    static double of(Function function, double low, double high, double start) {
        double a = low;
        double b = high;
        double at = start > low && start < high ? start : (low + high) / 2;
        double[] f = new double[2];
        for (int i = 0; i < MOST_STEPS && b - a > CLOSE * Math.max(1, Math.abs(a)); i++) {
            function.at(at, f);
            if (f[0] < 0) {
                a = at;
            } else {
                b = at;
            }
            double next = at - f[0] / f[1];
            boolean inside = next > a && next < b; // false for what is no number, too
            if (inside && Math.abs(next - at) <= CLOSE * Math.max(1, Math.abs(at))) {
                return next;
            }
            at = inside ? next : (a + b) / 2;
        }
        return at;
    }
}
