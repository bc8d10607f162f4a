package org.skeinday.hall;

import org.skeinday.units.EnumWords;

/** Which side of the winding line, seen from the mount towards the winder. */
public enum Side {
    LEFT(1),
    RIGHT(-1);

    private final int sign;

    Side(int sign) {
        this.sign = sign;
    }

    double sign() {
        return sign;
    }

    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for another word */
    public static Side ofWord(String word) {
        return EnumWords.parse("The side, seen from the mount,", Side.class, word);
    }
}
