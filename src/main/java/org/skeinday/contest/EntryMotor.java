package org.skeinday.contest;

/** Fact {@code entry.motor}: this entry has declared this motor. */
public record EntryMotor(String entryId, String motorId) {}
