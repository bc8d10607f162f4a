package org.skeinday.contest;

import org.jspecify.annotations.Nullable;

/** Fact {@code entry.added}: one taking part in an event; {@code own} is of the coach's own team. */
public record EntryAdded(
        String id,
        String eventId,
        String name,
        String team,
        @Nullable String division,
        boolean own) {
    public EntryAdded {
        Must.beNamed("The entry's name", name);
    }
}
