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

    /** Somebody read the meter after a mark was missed. */
    public boolean isSet() {
        return mark.setTo() != null;
    }

    /** The needle rose, as far as anybody saw. */
    public boolean rose() {
        return mark.step() > 0 || level > before;
    }
}
