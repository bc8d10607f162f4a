package org.skeinday.steps;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code checklist.revised}: from now on a list is walked through in this revision; runs that have begun go on in
 * theirs.
 *
 * @param rows all of one list and revision, which {@link Checklists} accepts
 * @param atMs by the server's clock, epoch ms
 */
public record ChecklistRevised(
        List<ChecklistRow> rows, long atMs, @Nullable String personId) {
    public ChecklistRevised {
        rows = List.copyOf(rows);
        Preconditions.within(
                "The number of lists in one revision", Checklists.of(rows).size(), 1, 1);
    }
}
