package org.skeinday.contest;

/** Fact {@code entry.task}: this person does this task, one of {@link CrewAdded#ROLES}, for this entry. */
public record EntryTask(String entryId, String task, String personId) {
    public EntryTask {
        Must.beOneOf("A task", task, CrewAdded.ROLES);
    }
}
