package org.skeinday.units;

/** Bounds that values keep from their construction on. */
final class Require {
    private Require() {}

    static double zeroOrMore(String what, double value, String unit) {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(
                    what + " must be zero or more and finite, but was " + value + " " + unit);
        }
        return value;
    }
}
