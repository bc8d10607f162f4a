package org.skeinday.attempt;

import org.skeinday.contest.CrewAdded;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.hand}: this person does this task of this attempt, called or to be called, whatever the plan and the
 * entry say.
 *
 * @param task one of {@link CrewAdded#ROLES}
 * @param personId empty for whoever the plan or the entry names
 */
public record HandNamed(String entryId, int number, String task, String personId) {
    public HandNamed {
        Preconditions.oneOf("A task", task, CrewAdded.ROLES);
    }
}
