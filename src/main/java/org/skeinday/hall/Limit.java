package org.skeinday.hall;

import org.skeinday.units.PlainNumber;

/** Bounds that the values of this room keep from their construction on. */
final class Limit {
    /** What counts as exactly at a limit, mm: far below any tape, above the noise of binary fractions. */
    static final double SAME_MM = 0.01;

    private Limit() {}

    static void within(String what, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(
                    what + " must be " + plain(least) + " to " + plain(most) + ", but was " + plain(value));
        }
    }

    static void filled(String what, String value) {
        if (value.isBlank()) {
            throw new IllegalArgumentException(what + " must not be empty");
        }
    }

    static String plain(double value) {
        return PlainNumber.of(value);
    }
}
