package org.skeinday.attempt;

/** Closed, scrubbed or void: no move leads out of it. */
public record EndedAttempt(String id) implements Attempt {}
