package org.skeinday.contest;

import java.util.List;

/** What the facts of this package ask of their fields, with a message that says what must hold and what it was. */
final class Must {
    private Must() {}

    static void beOneOf(String what, String word, List<String> words) {
        if (!words.contains(word)) {
            throw new IllegalArgumentException(
                    what + " must be one of " + String.join(", ", words) + ", but was '" + word + "'");
        }
    }

    static void beNamed(String what, String text) {
        if (text.isBlank()) {
            throw new IllegalArgumentException(what + " must not be empty");
        }
    }

    static void beWithin(String what, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(what + " must be from " + least + " to " + most + ", but was " + value);
        }
    }
}
