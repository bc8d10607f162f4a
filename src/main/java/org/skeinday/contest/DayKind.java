package org.skeinday.contest;

import org.skeinday.units.EnumWords;

/** What kind of day an event is: how its times become final differs. */
public enum DayKind {
    /** Elsewhere: officials announce the time. */
    VISITING,
    /** Our own event: timekeepers and captain sign the time. */
    HOSTING,
    /** Flights are logged; nobody is called. */
    PRACTICE;

    /** As the record and files have it. */
    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for a word that is none of them */
    public static DayKind of(String word) {
        return EnumWords.parse("The kind of day", DayKind.class, word);
    }
}
