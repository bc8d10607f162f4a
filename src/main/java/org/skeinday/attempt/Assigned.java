package org.skeinday.attempt;

import java.util.List;

/**
 * Who does one task of an attempt, and who says so.
 *
 * @param people ids; one where somebody is named, else all who are cleared for it
 */
public record Assigned(List<String> people, Source source) {
    /** Who says so; the first that says anything holds. */
    public enum Source {
        /** It was so when winding began: nothing that is said later changes it. */
        KEPT,
        /** Somebody said it for this attempt. */
        BY_HAND,
        /** The plan of the day in force. */
        PLAN,
        /** Who is named for the entry. */
        ENTRY,
        /** Nobody: whoever is cleared may. */
        CLEARED
    }

    public Assigned {
        people = List.copyOf(people);
    }

    /** Whether it is one person's. */
    public boolean isNamed() {
        return source != Source.CLEARED;
    }
}
