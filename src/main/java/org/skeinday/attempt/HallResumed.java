package org.skeinday.attempt;

/** Fact {@code hall.resumed}: it goes on, ms since 1970 UTC; the windows were shifted by facts of their own. */
public record HallResumed(String id, long atMs) {}
