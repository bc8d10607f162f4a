package org.skeinday.dayplan;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/** Bounds of what a plan counts in whole seconds. */
final class PlanTime {
    /** Times and spans lie within this, so that sums over a day never overflow. */
    static final long LONGEST = 1_000_000_000L;

    private PlanTime() {}

    /** Since the plan's zero, before or after it; passes over what is not known. */
    static void time(String what, @Nullable Long value) {
        Preconditions.within(what, value, -LONGEST, LONGEST);
    }

    /** Zero or more; passes over what is not known. */
    static void span(String what, @Nullable Long value) {
        Preconditions.within(what, value, 0, LONGEST);
    }
}
