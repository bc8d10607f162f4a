package org.skeinday.platform.http;

import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/**
 * A PIN as it is kept: rounds, salt and a slow hash (PBKDF2 with HMAC-SHA-256, RFC 8018), as {@code 210000:salt:hash}; one
 * of before has no rounds in front and was made with {@value #ROUNDS_BEFORE}.
 */
public final class PinHash {
    private static final int ROUNDS_BEFORE = 210_000;
    private static final Pattern KEPT = Pattern.compile("(?:([1-9][0-9]{0,6}):)?([0-9a-f]{32}):([0-9a-f]{64})");

    private PinHash() {}

    /** @param rounds of the hash: what makes guessing slow; 1 to 9,999,999 */
    public static String of(String pin, int rounds, SecureRandom random) {
        byte[] salt = new byte[16];
        random.nextBytes(salt);
        HexFormat hex = HexFormat.of();
        return rounds + ":" + hex.formatHex(salt) + ":" + hex.formatHex(slow(pin, salt, rounds));
    }

    /** Whether this is what {@link #of} makes or made. Nothing fits anything else. */
    public static boolean isWhole(String kept) {
        return KEPT.matcher(kept).matches();
    }

    public static boolean fits(String pin, String kept) {
        Matcher parts = KEPT.matcher(kept);
        if (!parts.matches()) {
            return false;
        }
        String rounds = parts.group(1);
        HexFormat hex = HexFormat.of();
        return MessageDigest.isEqual(
                hex.parseHex(parts.group(3)),
                slow(pin, hex.parseHex(parts.group(2)), rounds == null ? ROUNDS_BEFORE : Integer.parseInt(rounds)));
    }

    private static byte[] slow(String pin, byte[] salt, int rounds) {
        try {
            return SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256")
                    .generateSecret(new PBEKeySpec(pin.toCharArray(), salt, rounds, 256))
                    .getEncoded();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Every Java has PBKDF2", e);
        }
    }
}
