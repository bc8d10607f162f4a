package org.skeinday.review;

import org.jspecify.annotations.Nullable;

/** Bounds that the values of this room keep from their construction on. */
final class Check {
    private Check() {}

    static double finite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " must be a finite number, but was " + value);
        }
        return value;
    }

    /** Passes over what is not known. */
    static void within(String what, @Nullable Number value, double least, double most) {
        if (value != null && !(value.doubleValue() >= least && value.doubleValue() <= most)) {
            throw new IllegalArgumentException(what + " must be from " + least + " to " + most + ", but was " + value);
        }
    }

    static String filled(String what, String text) {
        if (text.isBlank()) {
            throw new IllegalArgumentException(what + " must not be empty");
        }
        return text;
    }

    static double share(String what, double value) {
        if (!(value > 0 && value < 1)) {
            throw new IllegalArgumentException(what + " must lie between 0 and 1, but was " + value);
        }
        return value;
    }
}
