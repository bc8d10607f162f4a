package org.skeinday.steps;

/** What a caution is about, those that come first in front. */
public enum Hazard {
    VENUE,
    YOUNG_PEOPLE,
    STRETCHED_RUBBER,
    WINDING,
    WOUND_MOTOR,
    CARRYING,
    RUBBER_HYGIENE,
    RETRIEVAL
}
