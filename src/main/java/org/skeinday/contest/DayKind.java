package org.skeinday.contest;

import java.util.Locale;

/** What kind of day an event is: how its times become final differs. */
public enum DayKind {
    /** Elsewhere: officials announce the time. */
    VISITING,
    /** Our own event: timekeepers and captain sign the time. */
    HOSTING,
    /** Flights are logged; nobody is called. */
    PRACTICE;

    /** @throws IllegalArgumentException for a word that is none of them */
    static DayKind of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
