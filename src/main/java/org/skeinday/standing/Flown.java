package org.skeinday.standing;

/**
 * One flight as it came to be decided.
 *
 * @param officialMs its reduced time in ms, zero or more
 * @param voidReason why it counts for nothing, for example that it is flown again after a collision; empty when it counts
 */
public record Flown(String id, long officialMs, String voidReason) {
    public Flown {
        if (officialMs < 0) {
            throw new IllegalArgumentException("A time must be zero or more, but was " + officialMs + " ms");
        }
    }

    public Flown(String id, long officialMs) {
        this(id, officialMs, "");
    }
}
