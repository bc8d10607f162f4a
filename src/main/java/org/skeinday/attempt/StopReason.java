package org.skeinday.attempt;

import org.skeinday.units.EnumWords;

/** Why a whole hall is stopped (common practice). */
public enum StopReason {
    INJURY("injury"),
    FIRE("fire or alarm"),
    LIGHTS("lights out"),
    MODEL_ALOFT("a model aloft that must be fetched"),
    FLOOR("somebody on the floor"),
    OTHER("another reason");

    private final String words;

    StopReason(String words) {
        this.words = words;
    }

    /** As the record writes it. */
    public String word() {
        return EnumWords.of(this);
    }

    /** As pages say it. */
    public String words() {
        return words;
    }

    /** @throws IllegalArgumentException for any other word */
    public static StopReason of(String word) {
        return EnumWords.parse("A reason to stop", StopReason.class, word);
    }
}
