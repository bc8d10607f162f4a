package org.skeinday.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code watch.judged}: what the captain decided of one timekeeper's watch. Readings stay as they are.
 *
 * @param slot which timekeeper, 1 to 3
 * @param verdict the word of a {@link WatchVerdict}
 * @param reason in words, never empty
 * @param atMs when, milliseconds since 1970 by the server's clock
 * @param readingId which one of several readings of this watch counts, of those that had come in; null where none was chosen
 */
public record WatchJudged(
        String id,
        String attemptId,
        int slot,
        String verdict,
        String reason,
        @Nullable String personId,
        long atMs,
        @Nullable String readingId) {
    public static final List<String> VERDICTS = EnumWords.of(WatchVerdict.class);

    public WatchJudged {
        Preconditions.within("A timekeeper's place", slot, 1, 3);
        Preconditions.oneOf("A verdict", verdict, VERDICTS);
        Preconditions.filled("The reason for what is decided of a watch", reason);
    }

    public WatchVerdict says() {
        return WatchVerdict.of(verdict);
    }
}
