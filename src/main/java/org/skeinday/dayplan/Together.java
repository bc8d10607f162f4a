package org.skeinday.dayplan;

/** Two tasks that one person should do both: another one is a hand-over. */
public record Together(String first, String second) {}
