package org.skeinday.hall;

import java.util.Arrays;

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
        return this == LEFT ? "left" : "right";
    }

    /** @throws IllegalArgumentException for another word */
    public static Side ofWord(String word) {
        return Arrays.stream(values())
                .filter(s -> s.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "'" + word + "' is no side; write left or right, seen from the mount"));
    }
}
