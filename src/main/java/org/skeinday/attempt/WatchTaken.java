package org.skeinday.attempt;

/** Fact {@code watch.taken}: one device times this attempt in this place, 1 to 3, from now on instead of any other. */
public record WatchTaken(String attemptId, int slot, String device, String personId) {}
