package org.skeinday.contest;

/** Fact {@code event.at-hand}: from now on people work on this event, on every page. */
public record EventAtHand(String eventId) {}
