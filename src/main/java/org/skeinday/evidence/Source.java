package org.skeinday.evidence;

import java.util.List;
import org.skeinday.units.EnumWords;

/** How a value came into the record. */
public enum Source {
    TAP("tapped"),
    TYPED("typed"),
    CARD("from a card"),
    FILE("from a file"),
    /** A form proposed it and nobody said that it was so this time. */
    OFFERED("offered");

    public static final List<String> WORDS = EnumWords.of(Source.class);

    private final String words;

    Source(String words) {
        this.words = words;
    }

    /** As a person reads it. */
    public String words() {
        return words;
    }

    /** As the record and files have it. */
    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for a word that none of them has */
    public static Source of(String word) {
        return EnumWords.parse("Where a value came from", Source.class, word);
    }
}
