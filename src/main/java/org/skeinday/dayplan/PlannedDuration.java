package org.skeinday.dayplan;

/**
 * How long a task was planned to take.
 *
 * @param task as {@link EventChains#task} names it
 * @param seconds 0 or more
 */
public record PlannedDuration(String eventId, String task, long seconds) {
    public PlannedDuration {
        if (seconds < 0) {
            throw new IllegalArgumentException(task + " must be planned to take 0 s or more, but was " + seconds);
        }
    }
}
