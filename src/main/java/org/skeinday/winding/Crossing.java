package org.skeinday.winding;

/**
 * One needle mark that counts, with the level before and after it.
 *
 * @param mark the tap
 * @param before and {@code level}: marks above the needle's zero, never below 0
 */
public record Crossing(WindMark mark, int before, int level) {
    public long elapsedMs() {
        return mark.elapsedMs();
    }

    /** The needle rose. */
    public boolean rose() {
        return mark.step() > 0;
    }
}
