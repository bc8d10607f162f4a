package org.skeinday.device;

import java.util.Locale;
import java.util.Optional;
import java.util.function.IntUnaryOperator;

/**
 * A code that is read off a screen across a room and typed: six letters and digits of which none is taken for another (no 0
 * and O, 1 and I and L, 2 and Z, 5 and S, 8 and B, Q, U and V). 22 signs make 113 million codes: enough where guesses are
 * slowed, and only there.
 */
public final class TypedCode {
    /** Signs of one code. */
    public static final int SIGNS = 6;

    static final String ALPHABET = "34679ACDEFGHJKMNPRTWXY";

    private TypedCode() {}

    /** Another one. @param below a random number from 0 to below what it is given */
    public static String fresh(IntUnaryOperator below) {
        StringBuilder code = new StringBuilder(SIGNS);
        for (int i = 0; i < SIGNS; i++) {
            code.append(ALPHABET.charAt(below.applyAsInt(ALPHABET.length())));
        }
        return code.toString();
    }

    /** The code as it is kept, from however people type it: small letters, a space or a hyphen in it; empty when it is none. */
    public static Optional<String> read(String typed) {
        String code = typed.replaceAll("[\\s-]", "").toUpperCase(Locale.ROOT);
        return code.length() == SIGNS && code.chars().allMatch(sign -> ALPHABET.indexOf(sign) >= 0)
                ? Optional.of(code)
                : Optional.empty();
    }

    /** In two groups, as it is read aloud: {@code K7P 4TX}. */
    public static String shown(String code) {
        return code.substring(0, SIGNS / 2) + " " + code.substring(SIGNS / 2);
    }
}
