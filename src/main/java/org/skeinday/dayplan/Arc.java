package org.skeinday.dayplan;

/**
 * {@code to} starts at least {@code length} after {@code from}; a negative length lets it start before.
 *
 * @param why the start is no sooner, and {@code words} the same for people who wait
 */
record Arc(String from, String to, long length, StartReason why, String words) {
    boolean isTight(DayPlan plan) {
        return plan.start(to) == plan.start(from) + length;
    }
}
