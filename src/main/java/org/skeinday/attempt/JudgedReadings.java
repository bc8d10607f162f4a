package org.skeinday.attempt;

import java.util.List;
import java.util.Optional;

/**
 * What the captain has said of one reading. A word is of the watch as it was then: a time that somebody types for the same
 * watch later is another reading and takes nothing over, and the reading before it keeps its own word. What a device sends
 * late is of the watch that was judged.
 */
public final class JudgedReadings {
    private JudgedReadings() {}

    /** The word that holds of it; empty while nobody has judged it. */
    public static Optional<WatchJudged> word(ReadingTaken reading, Timed timed) {
        List<WatchJudged> words = timed.judged().stream()
                .filter(word -> word.slot() == reading.slot() && !isTypedAfter(reading, word.atMs()))
                .toList();
        Optional<WatchJudged> last = words.stream().reduce((earlier, later) -> later);
        if (last.filter(word -> reading.id().equals(word.readingId())).isPresent()) {
            return last; // of several it was chosen
        }
        return words.stream()
                .filter(word -> isBeforeTheNext(word, reading, timed.readings()))
                .reduce((earlier, later) -> later)
                .or(() -> last);
    }

    /** Whether the captain has left it out, or its watch failed. */
    public static boolean isAside(ReadingTaken reading, Timed timed) {
        return word(reading, timed)
                .filter(word -> word.says() != WatchVerdict.COUNTS)
                .isPresent();
    }

    /** Whether it came before the time that was typed for the same watch after this reading, where there is one. */
    private static boolean isBeforeTheNext(WatchJudged word, ReadingTaken reading, List<ReadingTaken> all) {
        Long at = reading.atMs();
        return at != null
                && all.stream()
                        .filter(next -> next.slot() == reading.slot() && isTypedAfter(next, at))
                        .anyMatch(next -> isTypedAfter(next, word.atMs()));
    }

    private static boolean isTypedAfter(ReadingTaken reading, long ms) {
        Long at = reading.atMs();
        return !reading.wasTapped() && at != null && at > ms;
    }
}
