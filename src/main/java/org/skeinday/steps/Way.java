package org.skeinday.steps;

import java.util.List;
import org.skeinday.units.EnumWords;

/** How a list is walked through. */
public enum Way {
    READ_THEN_DO("read, then do"),
    DO_THEN_CONFIRM("do, then confirm");

    public static final List<String> WORDS = EnumWords.of(Way.class);

    private final String words;

    Way(String words) {
        this.words = words;
    }

    public String word() {
        return EnumWords.of(this);
    }

    /** As the list's head says it. */
    public String words() {
        return words;
    }

    /** @throws IllegalArgumentException for another word */
    public static Way ofWord(String word) {
        return EnumWords.parse("The way", Way.class, word);
    }
}
