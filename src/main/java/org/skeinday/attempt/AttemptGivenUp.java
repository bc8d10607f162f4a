package org.skeinday.attempt;

/** Fact {@code attempt.given-up}: scrubbed before release (the motor is run back) or void after it, with the reason. */
public record AttemptGivenUp(String attemptId, String state, long atMs, String reason) {}
