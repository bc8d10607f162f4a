package org.skeinday.attempt;

import org.skeinday.contest.CrewAdded;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.hand-kept}: who this task of an attempt was assigned to when its winding began. Whatever plan, entry or
 * hand says later, this one did it.
 *
 * @param task one of {@link CrewAdded#ROLES}
 * @param personId empty where nobody was named
 */
public record HandKept(String attemptId, String task, String personId) {
    public HandKept {
        Preconditions.oneOf("A task", task, CrewAdded.ROLES);
    }
}
