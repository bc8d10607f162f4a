package org.skeinday.motor;

import org.skeinday.units.EnumWords;

/** Where a motor is. */
public enum MotorPlace {
    TEAM("with the team"),
    /** Nothing may be done to it. */
    IN("handed in"),
    BACK("given back");

    private final String words;

    MotorPlace(String words) {
        this.words = words;
    }

    /** As the record and files have it. */
    public String word() {
        return EnumWords.of(this);
    }

    /** For people. */
    public String words() {
        return words;
    }
}
