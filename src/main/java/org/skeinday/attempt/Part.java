package org.skeinday.attempt;

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

    /** Whoever tells a step afterwards tells the next with it: what looks so much quicker or slower was not noted. */
    private static final long TOO_QUICK = 5;

    private static final long TOO_SLOW = 10;

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

    /** Whether people did take so long, and did not tell two steps at once; a flight may be as short as it was. */
    boolean isNoted(long seconds) {
        return seconds <= TOO_SLOW * defaultSeconds && (this == FLY || seconds * TOO_QUICK >= defaultSeconds);
    }
}
