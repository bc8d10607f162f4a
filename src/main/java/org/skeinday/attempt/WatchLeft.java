package org.skeinday.attempt;

/** Fact {@code watch.left}: a device is no longer this attempt's watch in this place; it becomes another one. */
public record WatchLeft(String attemptId, int slot, String device) {}
