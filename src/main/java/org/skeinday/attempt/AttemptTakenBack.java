package org.skeinday.attempt;

/** Fact {@code attempt.taken-back}: a step was a mistake; the attempt stands at an earlier state again. */
public record AttemptTakenBack(String attemptId, String state, long atMs) {}
