package org.skeinday.contest;

import java.util.List;
import java.util.Optional;
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

    /** In which an entry flies: its own, or the one for all. @param inOrder of one event, as they open */
    public static Optional<WindowAdded> of(List<WindowAdded> inOrder, String entryId) {
        return inOrder.stream().filter(window -> window.isFor(entryId)).findFirst();
    }

    private boolean isFor(String entry) {
        return entryId == null || entryId.equals(entry);
    }
}
