package org.skeinday.attempt;

/** Fact {@code attempt.station}: this attempt is wound at this winding place, with its meter and its winder. */
public record AttemptStation(String attemptId, String stationId) {}
