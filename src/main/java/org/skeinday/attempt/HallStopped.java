package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code hall.stopped}: everything in the hall stands still. Moments are ms since 1970 UTC.
 *
 * @param eventId at hand; {@link #PRACTICE} where none was
 * @param reason a word of {@link StopReason}
 * @param words what else was said; empty for nothing
 * @param resumedAtMs when it went on; null while it stands still
 */
public record HallStopped(
        String id,
        String eventId,
        long atMs,
        String reason,
        String words,
        @Nullable String personId,
        @Nullable Long resumedAtMs) {
    /** In the place of an event: nobody prepares for one, and motors are wound for practice. */
    public static final String PRACTICE = "";

    public HallStopped {
        StopReason.of(reason);
    }

    /** Why, in words. */
    public String why() {
        String reasons = StopReason.of(reason).words();
        return words.isEmpty() ? reasons : reasons + ": " + words;
    }
}
