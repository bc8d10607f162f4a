package org.skeinday.dayplan;

import java.util.OptionalLong;
import java.util.function.LongSupplier;
import org.skeinday.units.Preconditions;

/**
 * A search by the clock: how far it has come, for whoever waits, and where it must end. With a limit the clock decides
 * which plan is found and all processors look for it, so that the same problem may be answered otherwise another time.
 * Told and asked by different threads.
 */
public final class SearchClock {
    /** The longest that may be asked for, in seconds: a day. */
    public static final double LONGEST = 86_400;

    /** Of the limit this much, and no more than a second, is kept for all after the headline. */
    private static final double FOR_THE_REST = 0.1;

    private static final double WORK_A_SECOND = 0.1; // as Effort counts it
    private static final double LEAST_WORK = 0.002;

    private final double most;
    private final LongSupplier nanos;
    private final boolean heard;
    private final long began;
    private volatile long best = Long.MAX_VALUE;
    private volatile long bound = Long.MIN_VALUE;

    private SearchClock(double most, LongSupplier nanos, boolean heard) {
        this.most = most;
        this.nanos = nanos;
        this.heard = heard;
        this.began = nanos.getAsLong();
    }

    /** @param nanos of a clock that is never set */
    public static SearchClock unlimited(LongSupplier nanos) {
        return new SearchClock(Double.POSITIVE_INFINITY, nanos, true);
    }

    /** For a search that nobody waits at. */
    static SearchClock unheard() {
        return new SearchClock(Double.POSITIVE_INFINITY, () -> 0, false);
    }

    /** Runs from now on. @param seconds above 0, {@link #LONGEST} at most */
    public static SearchClock of(double seconds, LongSupplier nanos) {
        Preconditions.within("The limit in seconds", Preconditions.positive("The limit", seconds), 0, LONGEST);
        return new SearchClock(seconds, nanos, true);
    }

    boolean isHeard() {
        return heard;
    }

    boolean isLimited() {
        return most < Double.POSITIVE_INFINITY;
    }

    /** Seconds since it began. */
    public double elapsed() {
        return (nanos.getAsLong() - began) / 1e9;
    }

    /** Seconds for what is sought after the headline, 0 or more. */
    double left() {
        return Math.max(0, most - elapsed());
    }

    boolean isOver() {
        return left() == 0;
    }

    /** The same for the headline. */
    double leftForHeadline() {
        return isLimited() ? Math.max(0.001, left() - Math.min(1, FOR_THE_REST * most)) : most;
    }

    /** No more than what is left of the limit allows. */
    public Effort within(Effort effort) {
        double work = isLimited() ? Math.max(LEAST_WORK, WORK_A_SECOND * left()) : Double.MAX_VALUE;
        return new Effort(Math.min(effort.proofWork(), 4 * work), Math.min(effort.goalWork(), work));
    }

    /** A plan with this headline was found, and by then it is known that none has less than {@code noneBelow}. */
    void found(long headline, long noneBelow) {
        best = headline;
        noneBelow(noneBelow);
    }

    void noneBelow(long headline) {
        bound = Math.max(bound, headline);
    }

    /** The headline of the best plan so far; empty before there is one. */
    OptionalLong best() {
        return best == Long.MAX_VALUE ? OptionalLong.empty() : OptionalLong.of(best);
    }

    /** What no plan's headline is below. */
    OptionalLong bound() {
        return bound == Long.MIN_VALUE ? OptionalLong.empty() : OptionalLong.of(bound);
    }

    /** How far it has come, in the goal's own figures. */
    public String words(Goal goal) {
        boolean end = goal == Goal.MAKESPAN;
        long sign = end ? 1 : -1;
        OptionalLong plan = best();
        String known = plan.isEmpty()
                ? "no plan yet"
                : (end ? "a plan that ends at " : "a plan with in hand ") + sign * plan.getAsLong();
        OptionalLong least = bound();
        return known
                + (least.isEmpty()
                        ? ""
                        : (end ? ", none ends before " : ", none has more than ") + sign * least.getAsLong());
    }
}
