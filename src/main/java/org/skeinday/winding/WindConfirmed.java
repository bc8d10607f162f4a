package org.skeinday.winding;

import org.skeinday.units.Preconditions;

/** Fact {@code wind.confirmed}: a doubtful reading was asked about, and it was so. */
public record WindConfirmed(String markId, String windId) {
    public WindConfirmed {
        Preconditions.filled("The mark", markId);
        Preconditions.filled("The wind", windId);
    }
}
