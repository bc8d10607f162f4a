package org.skeinday.motor;

import java.util.Locale;

/** Where a motor is in its life. Handed in is no stage: it keeps the one it has, and nothing may be done to it. */
public enum MotorStage {
    CUT,
    WEIGHED,
    LUBRICATED,
    CONDITIONED,
    RESTING,
    READY,
    WOUND,
    ON_MODEL("on the model"),
    FLOWN,
    RUN_BACK("run back"),
    GRITTY,
    WASHED,
    RETIRED,
    BROKEN,
    LOST;

    private final String word;

    MotorStage() {
        this.word = name().toLowerCase(Locale.ROOT);
    }

    MotorStage(String word) {
        this.word = word;
    }

    /** As people say it, and as the record keeps it. */
    public String word() {
        return word;
    }

    public static MotorStage of(String word) {
        for (MotorStage stage : values()) {
            if (stage.word.equals(word)) {
                return stage;
            }
        }
        throw new IllegalArgumentException("A motor's stage must be one of its words, but was '" + word + "'");
    }

    /** Turns in it: both ends are live. */
    public boolean isLoaded() {
        return this == WOUND || this == ON_MODEL;
    }

    /** Of no more use until someone says otherwise. */
    public boolean isOut() {
        return this == RETIRED || this == BROKEN || this == LOST;
    }
}
