package org.skeinday.contest;

import org.skeinday.units.Preconditions;

/** Fact {@code entry.task}: this person does this task, one of {@link CrewAdded#ROLES}, for this entry. */
public record EntryTask(String entryId, String task, String personId) {
    public EntryTask {
        Preconditions.oneOf("A task", task, CrewAdded.ROLES);
    }
}
