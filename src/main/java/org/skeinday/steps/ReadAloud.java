package org.skeinday.steps;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code list.read-aloud}: a whole list was read aloud and answered, with one tap: each of its items is ticked.
 *
 * @param revision of the list that was read
 * @param atMs by the server's clock, epoch ms
 */
public record ReadAloud(
        String id,
        String runId,
        int revision,
        long atMs,
        @Nullable String personId,
        String device) implements RunFact {
    public ReadAloud {
        Preconditions.filled("The run", runId);
        Preconditions.within("The revision", revision, 1, 9999);
    }
}
