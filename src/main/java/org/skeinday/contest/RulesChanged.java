package org.skeinday.contest;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code rules.changed}: rules that were changed after a flight was official. It stands on sheet and wall.
 *
 * @param changed which fields, from what to what
 * @param moved which times and places that moved, in words
 */
public record RulesChanged(
        String id, String eventId, long atMs, @Nullable String personId, String reason, String changed, String moved) {
    private static final int LONGEST_CHANGED = 1000;
    private static final int LONGEST_MOVED = 2000;

    public RulesChanged {
        changed = cut(changed, LONGEST_CHANGED);
        moved = cut(moved, LONGEST_MOVED);
    }

    private static String cut(String words, int longest) {
        return words.length() <= longest ? words : words.substring(0, longest - 1) + "…";
    }
}
