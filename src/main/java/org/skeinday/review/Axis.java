package org.skeinday.review;

import org.skeinday.units.Preconditions;

/**
 * What an axis measures.
 *
 * @param words for example "launch torque"
 * @param unit empty for a count or a share
 * @param whole whether only whole numbers have a meaning, as for a count
 */
public record Axis(String words, String unit, boolean whole) {
    public Axis(String words, String unit) {
        this(words, unit, false);
    }

    static Axis ofCount(String words) {
        return new Axis(words, "", true);
    }

    public Axis {
        Preconditions.filled("What an axis measures", words);
    }

    /** For example "launch torque (mN·m)". */
    public String title() {
        return unit.isEmpty() ? words : words + " (" + unit + ")";
    }
}
