package org.skeinday.motor;

import org.skeinday.units.EnumWords;

/** What was to end a wind, as set before the first crank turn. */
public enum StopRule {
    /** A number of turns. */
    COUNT,
    /** A torque: it stops just those motors that were about to break, so it says too little about breaking. */
    TORQUE,
    /** Wound on purpose until it broke. */
    BREAKING;

    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for another word */
    public static StopRule of(String word) {
        return EnumWords.parse("What ends the wind", StopRule.class, word);
    }

    /** Whether a motor that was stopped by this rule unbroken is censored independently of its strength. */
    public boolean admitsToFit() {
        return this != TORQUE;
    }
}
