package org.skeinday.attempt;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a form showed of an attempt when it was opened, so that nobody decides on what is no longer so.
 *
 * @param readings how many readings had come in, mistakes included
 * @param words how many other keys had been pressed and decisions made of its watches
 */
public record Seen(State state, int readings, int words) {
    private static final Pattern TEXT = Pattern.compile("([a-z]+) (\\d{1,6})(?: (\\d{1,6}))?");

    /** As a form carries it, for example {@code landed 2 5}. */
    public String text() {
        return state.word() + " " + readings + " " + words;
    }

    /**
     * Reads what a form carried.
     *
     * @return empty when it carried nothing
     * @throws IllegalArgumentException when it is something else
     */
    public static Optional<Seen> parse(@Nullable String text) {
        if (text == null || text.isEmpty()) {
            return Optional.empty();
        }
        Matcher parts = TEXT.matcher(text);
        if (!parts.matches()) {
            throw new IllegalArgumentException(
                    "What the page showed must be a state and a number of readings, but was '" + text + "'");
        }
        return Optional.of(new Seen(
                State.of(parts.group(1)),
                Integer.parseInt(parts.group(2)),
                parts.group(3) == null ? 0 : Integer.parseInt(parts.group(3))));
    }

    /** What is different now in the attempt's state, in words; empty when nothing is. @param now where it stands */
    public Optional<String> moved(State nowState, LiveAttempt now) {
        return nowState == state
                ? Optional.empty()
                : Optional.of("Someone else was quicker: this attempt was " + PhaseWords.was(state, now)
                        + ", now it is " + PhaseWords.inSentence(now)
                        + ". Look again, then decide.");
    }

    /** What is different now in state or readings, in words; empty when nothing is. @param live where it stands */
    public Optional<String> changed(Seen now, LiveAttempt live) {
        return moved(now.state, live)
                .or(() -> now.readings == readings
                        ? otherWords(now)
                        : Optional.of("A watch was read or corrected meanwhile: there were " + readings
                                + " readings, now there are " + now.readings + ". Look again, then decide."));
    }

    private Optional<String> otherWords(Seen now) {
        return now.words == words
                ? Optional.empty()
                : Optional.of(
                        "A timekeeper has marked something, or a watch was judged meanwhile. Look again, then decide.");
    }
}
