package org.skeinday.dayplan;

import java.util.Locale;

/** The parts of one attempt, in order; each with how long it takes where nothing is known yet (common practice). */
public enum Part {
    /** Motor, spare, model and people to the stand; checks read aloud. */
    PREPARE(300),
    /** From the first crank turn to the last one back off. */
    WIND(240),
    /** The wound motor from the meter onto the model. */
    LOAD(45),
    /** From release to landing. */
    FLY(150),
    /** What is left is run back and counted. */
    RUN_BACK(120);

    private final long defaultSeconds;

    Part(long defaultSeconds) {
        this.defaultSeconds = defaultSeconds;
    }

    public long defaultSeconds() {
        return defaultSeconds;
    }

    /** As in a task's name. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
