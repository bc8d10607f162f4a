package org.skeinday.winding;

/** Fact {@code wind.confirmed}: a doubtful reading was asked about, and it was so. */
public record WindConfirmed(String markId, String windId) {
    public WindConfirmed {
        Limit.filled("The mark", markId);
        Limit.filled("The wind", windId);
    }
}
