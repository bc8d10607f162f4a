package org.skeinday.motor;

import java.util.List;
import org.skeinday.units.EnumWords;

/** Which way a motor is wound, for life, seen from the winder. */
public enum Direction {
    CW("clockwise", "↻"),
    ACW("anticlockwise", "↺");

    /** As the record and files have them. */
    public static final List<String> WORDS = EnumWords.of(Direction.class);

    private final String words;
    private final String arrow;

    Direction(String words, String arrow) {
        this.words = words;
        this.arrow = arrow;
    }

    /** @throws IllegalArgumentException for a word that is none of {@link #WORDS} */
    public static Direction of(String word) {
        return EnumWords.parse("The direction", Direction.class, word);
    }

    /** The other way round. */
    public Direction other() {
        return this == CW ? ACW : CW;
    }

    public String word() {
        return EnumWords.of(this);
    }

    /** For a sentence. */
    public String words() {
        return words;
    }

    /** As it is drawn. */
    public String arrow() {
        return arrow;
    }

    /** For pages and paper: the arrow is seen before the word is read. */
    public String withArrow() {
        return arrow + " " + words;
    }
}
