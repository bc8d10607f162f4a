package org.skeinday.evidence;

import org.jspecify.annotations.Nullable;

/**
 * Whether something of the record may enter averages, fits and forecasts, and if not, why.
 *
 * @param because null where it counts
 * @param detail what is known beyond the code, for example what it touched; may be empty
 */
public record Counts(@Nullable NotCounted because, String detail) {
    private static final Counts YES = new Counts(null, "");

    public Counts {
        if (because == null && !detail.isEmpty()) {
            throw new IllegalArgumentException("What counts must have no reason against it, but had '" + detail + "'");
        }
    }

    public static Counts yes() {
        return YES;
    }

    public static Counts not(NotCounted because, String detail) {
        return new Counts(because, detail);
    }

    /** Left out by a person. @throws IllegalArgumentException without a reason */
    public static Counts leftOut(String reason) {
        if (reason.isBlank()) {
            throw new IllegalArgumentException("A flight that is left out must have a reason, but had none");
        }
        return new Counts(NotCounted.LEFT_OUT, reason);
    }

    public boolean isYes() {
        return because == null;
    }

    public boolean isUndecided() {
        return because == NotCounted.UNDECIDED;
    }

    /** Why it is left out, as a person said it or as it follows from what was seen; empty where it is not left out. */
    public String reason() {
        return because == NotCounted.LEFT_OUT || because == NotCounted.STEERED ? detail : "";
    }

    /** For example {@code counts}, {@code undecided: touched at 0:31} or {@code left out: touched a wall}. */
    public String words() {
        return because == null ? "counts" : because.words() + (detail.isEmpty() ? "" : ": " + detail);
    }
}
