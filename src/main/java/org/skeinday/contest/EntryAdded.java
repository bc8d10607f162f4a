package org.skeinday.contest;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code entry.added}: one taking part in an event.
 *
 * @param own whether it is of the coach's own team
 * @param callOrder its place in the order in which entries are called, 1 to 999; null for none
 */
public record EntryAdded(
        String id,
        String eventId,
        String name,
        String team,
        @Nullable String division,
        boolean own,
        @Nullable Integer callOrder) {
    public EntryAdded {
        Preconditions.filled("The entry's name", name);
        if (callOrder != null) {
            Preconditions.within("The call order", callOrder, 1, 999);
        }
    }
}
