package org.skeinday.attempt;

import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What somebody's hands do in an attempt. */
public enum Hands {
    /** Winds, loads or releases: from the first crank turn to the release this person has no key to press. */
    ON_THE_MOTOR,
    /** Reads the meter and speaks to the winder. */
    READER,
    TIMEKEEPER,
    /** Has the laptop; when hosting, the chief. */
    CAPTAIN,
    /** Looks on. */
    NONE;

    /** By its word, as a page sends it; the captain's where nothing is said. */
    public static Hands of(@Nullable String word) {
        return Stream.of(values())
                .filter(hands -> hands.word().equals(word))
                .findFirst()
                .orElse(CAPTAIN);
    }

    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
