package org.skeinday.steps;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code run.begun}: a list is walked through, once for each thing it is about.
 *
 * @param subjectId the attempt, winding place, model or day
 * @param atMs by the server's clock, epoch ms
 */
public record RunBegun(
        String id,
        String listId,
        int revision,
        String subjectId,
        long atMs,
        @Nullable String personId,
        String device) {
    public RunBegun {
        Preconditions.filled("The list", listId);
        Preconditions.filled("What the list is about", subjectId);
        Preconditions.within("The revision", revision, 1, 9999);
    }
}
