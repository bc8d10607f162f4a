package org.skeinday.contest;

/** Fact {@code crew.removed}: this person's line for this event, empty for all, no longer holds. */
public record CrewRemoved(String personId, String eventId) {}
