package org.skeinday.exchange;

import org.skeinday.contest.CrewAdded;

/**
 * Names a line of the crew: it has no id of its own, as it is about a person and an event.
 *
 * @param eventId empty for all events
 */
public record CrewLineId(String personId, String eventId) {
    private static final String BETWEEN = "~";

    public static CrewLineId of(CrewAdded crew) {
        return new CrewLineId(crew.personId(), crew.eventId());
    }

    /** @throws IllegalArgumentException for a text that {@link #toString} does not make */
    public static CrewLineId parse(String id) {
        int between = id.indexOf(BETWEEN);
        if (between < 0) {
            throw new IllegalArgumentException(
                    "A line of the crew must be named person" + BETWEEN + "event, but was '" + id + "'");
        }
        return new CrewLineId(id.substring(0, between), id.substring(between + 1));
    }

    /** As forms and addresses have it. */
    @Override
    public String toString() {
        return personId + BETWEEN + eventId;
    }

    /** Whether this text names it. */
    public boolean is(String id) {
        return toString().equals(id);
    }
}
