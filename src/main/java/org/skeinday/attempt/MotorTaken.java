package org.skeinday.attempt;

/** Fact {@code attempt.motor}: another motor is taken before the release; the attempt is called, its wind begins anew. */
public record MotorTaken(String attemptId, String motorId, long atMs) {}
