package org.skeinday.motor;

import org.skeinday.units.Preconditions;

/**
 * A range said with a stated confidence, in the unit of the estimate it surrounds.
 *
 * @param confidence strictly between 0 and 1
 */
public record Interval(double low, double high, double confidence) {
    public Interval {
        Preconditions.share("An interval's confidence", confidence);
        if (!(low <= high)) {
            throw new IllegalArgumentException(
                    "An interval's low end must not lie above its high end, but was " + low + " to " + high);
        }
    }

    public boolean holds(double value) {
        return value >= low && value <= high;
    }
}
