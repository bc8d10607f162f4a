package org.skeinday.platform.http;

import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/** A PIN as it is kept: salted and slow (PBKDF2 with HMAC-SHA-256, RFC 8018). */
public final class PinHash {
    private static final int ROUNDS = 210_000;

    private PinHash() {}

    public static String of(String pin, SecureRandom random) {
        byte[] salt = new byte[16];
        random.nextBytes(salt);
        HexFormat hex = HexFormat.of();
        return hex.formatHex(salt) + ":" + hex.formatHex(slow(pin, salt));
    }

    /** Whether this is what {@link #of} makes. Nothing fits anything else. */
    public static boolean isWhole(String kept) {
        return kept.matches("[0-9a-f]{32}:[0-9a-f]{64}");
    }

    public static boolean fits(String pin, String kept) {
        if (!isWhole(kept)) {
            return false;
        }
        String[] parts = kept.split(":", 2);
        HexFormat hex = HexFormat.of();
        return MessageDigest.isEqual(hex.parseHex(parts[1]), slow(pin, hex.parseHex(parts[0])));
    }

    private static byte[] slow(String pin, byte[] salt) {
        try {
            return SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256")
                    .generateSecret(new PBEKeySpec(pin.toCharArray(), salt, ROUNDS, 256))
                    .getEncoded();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Every Java has PBKDF2", e);
        }
    }
}
