package org.skeinday.review;

/**
 * What an axis measures.
 *
 * @param words for example "launch torque"
 * @param unit empty for a count or a share
 */
public record Axis(String words, String unit) {
    public Axis {
        Check.filled("What an axis measures", words);
    }

    /** For example "launch torque (mN·m)". */
    public String title() {
        return unit.isEmpty() ? words : words + " (" + unit + ")";
    }
}
