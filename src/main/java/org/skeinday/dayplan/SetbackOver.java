package org.skeinday.dayplan;

/** Fact {@code day.setback-over}: the person is back, the model mended or down. @param atMs ms since 1970 UTC */
public record SetbackOver(String id, long atMs) {}
