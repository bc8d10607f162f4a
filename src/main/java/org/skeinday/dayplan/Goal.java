package org.skeinday.dayplan;

/** What a plan is proven best in, once its windows are kept. */
public enum Goal {
    /** The end of the last task as early as can be. */
    MAKESPAN,
    /** The smallest time in hand before a window closes as large as can be. */
    SLACK
}
