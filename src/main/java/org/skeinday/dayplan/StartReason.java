package org.skeinday.dayplan;

/** Why a task starts no sooner than it does. */
public enum StartReason {
    /** After another task, as the trade has it: wound, then loaded. */
    FOLLOWS,
    /** It must not run ahead of another task. */
    RUNS_AHEAD,
    /** A place, a person or a motor is held by another task. */
    HELD,
    /** It has begun, or somebody fixed it. */
    FIXED,
    /** Its window, or the day, begins then. */
    NOT_BEFORE
}
