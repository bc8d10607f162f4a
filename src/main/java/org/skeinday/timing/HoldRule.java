package org.skeinday.timing;

import org.skeinday.units.FlightTime;
import org.skeinday.units.Preconditions;

/**
 * A model held by the building: it is watched for a while, and if still held, the flight is over and time is deducted.
 *
 * @param watchedMs how long it is watched, 0 to 600,000 ms
 * @param deductMs what is then deducted, zero to {@code watchedMs}
 */
public record HoldRule(long watchedMs, long deductMs) {
    /** Watch 10 s, deduct 10 s: FAI Sporting Code Section 4 F1, 3.4.3–3.4.9 (older edition). */
    public static final HoldRule TEN_SECONDS = new HoldRule(10_000, 10_000);

    /** Over at the moment at which it is caught. */
    public static final HoldRule AT_ONCE = new HoldRule(0, 0);

    public HoldRule {
        Preconditions.within("How long a held model is watched", watchedMs, 0, 600_000, "ms");
        Preconditions.within("The deduction from the time watched", deductMs, 0, watchedMs, "ms");
    }

    /** Whether nothing is watched: that it came free changes nothing. */
    public boolean endsAtOnce() {
        return watchedMs == 0;
    }

    /**
     * What a hand watch that ran until the watching ended comes to.
     *
     * @throws IllegalArgumentException when it shows less than was watched
     */
    public FlightTime deduct(FlightTime shown) {
        if (shown.millis() < watchedMs) {
            throw new IllegalArgumentException("A watch that ran to the end of the watching must show at least "
                    + new FlightTime(watchedMs).seconds(0) + " s, but shows " + shown.seconds(2) + " s");
        }
        return new FlightTime(shown.millis() - deductMs);
    }
}
