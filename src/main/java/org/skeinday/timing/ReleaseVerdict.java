package org.skeinday.timing;

/**
 * Where a release lies.
 *
 * @param withinMs how far inside the nearer end of the window; negative outside
 * @param words the verdict with its figures
 */
public record ReleaseVerdict(Side side, long withinMs, String words) {
    /** What the clocks can say. */
    public enum Side {
        INSIDE,
        OUTSIDE,
        BY_A_PERSON
    }
}
