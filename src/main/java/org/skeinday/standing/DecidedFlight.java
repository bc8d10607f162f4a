package org.skeinday.standing;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * One flight as it came to be decided.
 *
 * @param officialMs its reduced time in ms, zero or more
 * @param voidReason why it counts for nothing, for example that it is flown again after a collision; empty when it counts
 * @param withoutTime whether it uses up a flight all the same: declared void, and not flown again
 * @param rule by which it was judged when it was decided; null for the one that holds now
 */
public record DecidedFlight(
        String id,
        long officialMs,
        String voidReason,
        boolean withoutTime,
        @Nullable FlightsRule rule) {
    public DecidedFlight {
        Preconditions.zeroOrMore("A time", officialMs, "ms");
    }

    public DecidedFlight(String id, long officialMs) {
        this(id, officialMs, "", false, null);
    }

    /** Flown again: it uses up nothing. */
    public DecidedFlight(String id, long officialMs, String voidReason) {
        this(id, officialMs, voidReason, false, null);
    }

    /** Void: it uses up a flight and brings no time. */
    public static DecidedFlight withoutTime(String id, String reason) {
        return new DecidedFlight(id, 0, reason, true, null);
    }

    /** The same, judged by the rule of then; null for the one that holds now. */
    public DecidedFlight by(@Nullable FlightsRule then) {
        return new DecidedFlight(id, officialMs, voidReason, withoutTime, then);
    }
}
