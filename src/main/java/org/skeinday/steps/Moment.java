package org.skeinday.steps;

import java.util.List;
import org.skeinday.units.EnumWords;

/** A natural pause of the day, at which a list is walked through or a caution is read. */
public enum Moment {
    PACKING,
    ARRIVAL,
    WINDING_PLACE,
    MODEL_INSPECTION,
    BEFORE_WINDING,
    /** Read aloud before winding starts, since nothing is read once it has. */
    BEFORE_LOADING,
    /** Between the last crank turn and release: hand signals, on paper only. */
    RELEASE,
    AFTER_LANDING,
    END_OF_DAY;

    public static final List<String> WORDS = EnumWords.of(Moment.class);

    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for another word */
    public static Moment ofWord(String word) {
        return EnumWords.parse("A moment", Moment.class, word);
    }

    /** From the first crank turn to release no page asks, ticks, reminds or cautions. */
    public boolean isQuiet() {
        return this == RELEASE;
    }

    /** Whether its list is tapped through once for each attempt. */
    public boolean isOfEachAttempt() {
        return this == BEFORE_WINDING || this == BEFORE_LOADING || this == AFTER_LANDING;
    }
}
