package org.skeinday.timing;

import org.skeinday.units.FlightTime;
import org.skeinday.units.Preconditions;

/**
 * The working time in which a flight must be released, on one clock, in ms. Both ends are inside.
 *
 * @param lastCallMs how long before the end the last call is made; zero for none
 */
public record FlightWindow(long opensMs, long closesMs, long lastCallMs) {
    /** Own default: two minutes before the end. */
    public static final long LAST_CALL_MS = 120_000;

    /** Where a window stands at a moment. */
    public enum Phase {
        AHEAD,
        OPEN,
        LAST_CALL,
        CLOSED
    }

    public FlightWindow {
        if (closesMs < opensMs) {
            throw new IllegalArgumentException(
                    "A window must close after it opens at " + opensMs + " ms, but closes at " + closesMs + " ms");
        }
        Preconditions.within("The last call before the end", lastCallMs, 0, closesMs - opensMs, "ms");
    }

    public long lastCallAtMs() {
        return closesMs - lastCallMs;
    }

    public Phase at(long nowMs) {
        if (nowMs < opensMs) {
            return Phase.AHEAD;
        }
        if (nowMs > closesMs) {
            return Phase.CLOSED;
        }
        return lastCallMs > 0 && nowMs >= lastCallAtMs() ? Phase.LAST_CALL : Phase.OPEN;
    }

    /**
     * Whether a release was inside.
     *
     * @param releasedMs by the window's clock
     * @param boundMs how far off that may be, zero on the window's own device; round a part of a ms up
     */
    public ReleaseVerdict place(long releasedMs, long boundMs) {
        return place("Released", releasedMs, boundMs);
    }

    /** The same for rules that ask for the landing to be inside. */
    public ReleaseVerdict placeLanding(long landedMs, long boundMs) {
        return place("Landed", landedMs, boundMs);
    }

    /** A release whose moment is known only by when its tap came in, which may have been later. */
    public ReleaseVerdict placeUnknown(long cameInMs) {
        ReleaseVerdict latest = place(cameInMs, 0);
        return latest.side() == ReleaseVerdict.Side.OUTSIDE && cameInMs < opensMs
                ? latest // it can only have been earlier still
                : new ReleaseVerdict(
                        ReleaseVerdict.Side.BY_A_PERSON,
                        latest.withinMs(),
                        "The device did not know the window's clock; its release came in "
                                + seconds(Math.abs(latest.withinMs()))
                                + (cameInMs > closesMs
                                        ? " after it closed"
                                        : cameInMs - opensMs < closesMs - cameInMs
                                                ? " after it opened"
                                                : " before it closed")
                                + ": a person decides");
    }

    private ReleaseVerdict place(String what, long releasedMs, long boundMs) {
        Preconditions.zeroOrMore("A bound", boundMs, "ms");
        boolean early = releasedMs - opensMs < closesMs - releasedMs;
        long within = early ? releasedMs - opensMs : closesMs - releasedMs;
        String side = within < 0
                ? (early ? " before it opened" : " after it closed")
                : early ? " after it opened" : " before it closed";
        String words = what + " " + seconds(Math.abs(within)) + side;
        if (within >= boundMs) {
            return new ReleaseVerdict(ReleaseVerdict.Side.INSIDE, within, words + ": inside the window");
        }
        if (within < -boundMs) {
            return new ReleaseVerdict(ReleaseVerdict.Side.OUTSIDE, within, words + ": outside the window");
        }
        return new ReleaseVerdict(
                ReleaseVerdict.Side.BY_A_PERSON,
                within,
                words + ", but the two clocks may differ by " + seconds(boundMs) + ": a person decides");
    }

    /** Near an end every millisecond counts; from a minute on, whole seconds in minutes are easier to read. */
    private static String seconds(long ms) {
        return ms < 60_000 ? new FlightTime(ms).seconds(2) + " s" : new FlightTime(ms - ms % 1_000).text(0);
    }
}
