package org.skeinday.dayplan;

/**
 * {@code to} starts at least {@code length} after {@code from}; a negative length lets it start before.
 *
 * @param why in words, for people who wait
 */
record Arc(String from, String to, long length, String why) {
    boolean isTight(DayPlan plan) {
        return plan.start(to) == plan.start(from) + length;
    }
}
