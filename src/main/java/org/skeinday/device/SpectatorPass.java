package org.skeinday.device;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a spectator's device keeps: the spectators' code of the day and a number of its own. Nothing of it is in the record:
 * who looks on has joined nothing.
 *
 * @param code eight hexadecimal digits, as {@link #codeOf} makes them
 * @param own 16 hexadecimal digits that tell this device from others
 */
public record SpectatorPass(String code, String own) {
    private static final Pattern TEXT = Pattern.compile("look-([0-9a-f]{8})-([0-9a-f]{16})");
    private static final int DIGITS = 8;

    /**
     * Made from the join link, so that it holds as long as that one and ends with it. The link cannot be told from it: it is
     * the begin of a sum (SHA-256, FIPS 180-4) over 128 random bits.
     */
    public static String codeOf(JoinCode link) {
        return TokenHash.of("spectators " + link.text()).substring(0, DIGITS);
    }

    /** Reads {@link #text}; empty for anything else. */
    public static Optional<SpectatorPass> read(String text) {
        Matcher found = TEXT.matcher(text);
        return found.matches() ? Optional.of(new SpectatorPass(found.group(1), found.group(2))) : Optional.empty();
    }

    /** Whether a code is the one of this link. Takes the same time whatever is wrong with it. */
    public static boolean fits(JoinCode link, String code) {
        return JoinCode.isSame(codeOf(link), code);
    }

    /** As its cookie holds it. */
    public String text() {
        return "look-" + code + "-" + own;
    }

    /** By which its requests are told apart. */
    public String device() {
        return "spectator-" + own;
    }
}
