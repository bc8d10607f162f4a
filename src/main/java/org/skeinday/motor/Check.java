package org.skeinday.motor;

/** Bounds that the values of this room keep from their construction on. */
final class Check {
    private Check() {}

    static double finite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " must be a finite number, but was " + value);
        }
        return value;
    }

    static double positive(String what, double value) {
        if (!Double.isFinite(value) || value <= 0) {
            throw new IllegalArgumentException(what + " must be more than zero and finite, but was " + value);
        }
        return value;
    }

    static double zeroOrMore(String what, double value) {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(what + " must be zero or more and finite, but was " + value);
        }
        return value;
    }

    static double within(String what, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(what + " must be " + least + " to " + most + ", but was " + value);
        }
        return value;
    }

    /** A share strictly between 0 and 1, such as a level of confidence. */
    static double share(String what, double value) {
        if (!(value > 0 && value < 1)) {
            throw new IllegalArgumentException(what + " must lie between 0 and 1, but was " + value);
        }
        return value;
    }
}
