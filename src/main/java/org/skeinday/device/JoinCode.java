package org.skeinday.device;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;

/**
 * The code that lets a device join, as it stands in the join link.
 *
 * @param text 32 hexadecimal digits: 128 random bits
 */
public record JoinCode(String text) {
    /** @throws IllegalArgumentException when it is no code: an empty one would let everybody in */
    public JoinCode {
        if (!isCode(text)) {
            throw new IllegalArgumentException(
                    "A join code must be 32 hexadecimal digits, but was " + text.length() + " characters");
        }
    }

    public static boolean isCode(String text) {
        return text.matches("[0-9a-f]{32}");
    }

    /** Whether it is the one that was sent. Takes the same time whatever is wrong with it. */
    public boolean fits(String sent) {
        return isSame(text, sent);
    }

    /** Whether two secrets are the same, in a time that does not tell how much of them is. */
    public static boolean isSame(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }

    /** Its digits open the door, so they are in no log. */
    @Override
    public String toString() {
        return "JoinCode";
    }
}
