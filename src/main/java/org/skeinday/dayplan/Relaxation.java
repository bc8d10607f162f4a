package org.skeinday.dayplan;

/**
 * A requirement that may give, by as little as can be.
 *
 * @param what how it gives
 * @param id of the task, lag or resource; of all tasks when blank
 */
record Relaxation(What what, String id) {
    /** How a requirement gives. */
    enum What {
        NOTHING,
        EARLIEST,
        LATEST_END,
        LEAST_LAG,
        MOST_LAG,
        CAPACITY
    }

    static final Relaxation NOTHING = new Relaxation(What.NOTHING, "-");

    boolean covers(What which, String name) {
        return what == which && (id.isEmpty() || id.equals(name));
    }
}
