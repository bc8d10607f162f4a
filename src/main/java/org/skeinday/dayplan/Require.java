package org.skeinday.dayplan;

import org.jspecify.annotations.Nullable;

/** Bounds that the values of a plan keep from their construction on. */
final class Require {
    /** Times and spans lie within this, so that sums over a day never overflow. */
    static final long LONGEST = 1_000_000_000L;

    private Require() {}

    static String name(String what, String value) {
        if (value.isBlank()) {
            throw new IllegalArgumentException(what + " must have a name, but it was blank");
        }
        return value;
    }

    static void within(String what, @Nullable Long value, long low, long high) {
        if (value != null && (value < low || value > high)) {
            throw new IllegalArgumentException(what + " must be from " + low + " to " + high + ", but was " + value);
        }
    }

    static void time(String what, @Nullable Long value) {
        within(what, value, -LONGEST, LONGEST);
    }

    static void span(String what, @Nullable Long value) {
        within(what, value, 0, LONGEST);
    }
}
