package org.skeinday.attempt;

/** What somebody's hands do in an attempt. */
public enum Hands {
    /** Winds, loads or releases: from the first crank turn to the release this person has no key to press. */
    ON_THE_MOTOR,
    /** Reads the meter and speaks to the winder. */
    READER,
    TIMEKEEPER,
    /** Has the laptop; when hosting, the chief. */
    CAPTAIN,
    /** Looks on. */
    NONE;
}
