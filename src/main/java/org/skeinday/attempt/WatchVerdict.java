package org.skeinday.attempt;

import org.skeinday.units.EnumWords;

/** What a captain says of one timekeeper's watch. */
public enum WatchVerdict {
    /** It has no time. */
    FAILED,
    /** Its time does not count. */
    LEFT_OUT,
    /** As if nothing had been said. */
    COUNTS;

    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for a word that is none of them */
    static WatchVerdict of(String word) {
        return EnumWords.parse("A verdict", WatchVerdict.class, word);
    }
}
