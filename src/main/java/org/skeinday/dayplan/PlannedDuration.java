package org.skeinday.dayplan;

import org.skeinday.units.Preconditions;

/**
 * How long a task was planned to take.
 *
 * @param task as {@link EventChains#task} names it
 * @param nth for which try of the attempt, from 1; 0 for a task that is no attempt's
 * @param seconds 0 or more
 */
public record PlannedDuration(String eventId, String task, int nth, long seconds) {
    public PlannedDuration {
        Preconditions.zeroOrMore("The planned time of " + task, seconds, "s");
    }
}
