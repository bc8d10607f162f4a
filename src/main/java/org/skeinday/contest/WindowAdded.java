package org.skeinday.contest;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code window.added}: the working time of one entry, or of all when none is named. Times are milliseconds since
 * 1970 UTC.
 */
public record WindowAdded(
        String id, String eventId, @Nullable String entryId, long opensAtMs, long closesAtMs) {
    public WindowAdded {
        if (closesAtMs <= opensAtMs) {
            throw new IllegalArgumentException(
                    "A window must close after it opens, but was " + opensAtMs + " to " + closesAtMs + " ms");
        }
    }
}
