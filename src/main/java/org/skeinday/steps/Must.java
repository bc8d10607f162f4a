package org.skeinday.steps;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What the values of this room ask of their fields, with a message that says what must hold and what it was. */
final class Must {
    private Must() {}

    static void beFilled(String what, String text) {
        if (text.isBlank()) {
            throw new IllegalArgumentException(what + " must not be empty");
        }
    }

    static void beWithin(String what, long value, long least, long most) {
        if (value < least || value > most) {
            throw new IllegalArgumentException(what + " must be " + least + " to " + most + ", but was " + value);
        }
    }

    /** As files and records write a constant. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static List<String> words(Enum<?>[] all) {
        return Arrays.stream(all).map(Must::word).toList();
    }

    static <E extends Enum<E>> E ofWord(String what, E[] all, String word) {
        return Arrays.stream(all)
                .filter(e -> word(e).equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(what + " must be one of "
                        + Arrays.stream(all).map(Must::word).collect(Collectors.joining(", ")) + ", but was '" + word
                        + "'"));
    }
}
