package org.skeinday.steps;

import java.util.List;

/** How a list is walked through. */
public enum Way {
    READ_THEN_DO("read, then do"),
    DO_THEN_CONFIRM("do, then confirm");

    public static final List<String> WORDS = Must.words(values());

    private final String words;

    Way(String words) {
        this.words = words;
    }

    public String word() {
        return Must.word(this);
    }

    /** As the list's head says it. */
    public String words() {
        return words;
    }

    /** @throws IllegalArgumentException for another word */
    public static Way ofWord(String word) {
        return Must.ofWord("The way", values(), word);
    }
}
