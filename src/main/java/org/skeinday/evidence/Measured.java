package org.skeinday.evidence;

import org.skeinday.units.EnumWords;

/** What is told of one flight, each with where it came from; {@link #FLIGHT} is the row itself. */
public enum Measured {
    FLIGHT("the flight"),
    CRANK_TURNS("crank turns"),
    PEAK_TORQUE("highest torque"),
    LAUNCH_TORQUE("launch torque"),
    BACK_OFF("back-off"),
    REMAINING("turns remaining"),
    TIME("time"),
    /** Of a wind alone: no flight tells it. */
    AT_FULL("crank turns at full stretch");

    private final String words;

    Measured(String words) {
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
    public static Measured of(String word) {
        return EnumWords.parse("What was measured", Measured.class, word);
    }
}
