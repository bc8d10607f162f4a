package org.skeinday.attempt;

/** Fact {@code attempt.moved}: an attempt reached a state. */
public record AttemptMoved(String attemptId, String state, long atMs) {}
