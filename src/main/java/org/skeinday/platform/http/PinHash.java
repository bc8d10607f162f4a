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

    public static boolean fits(String pin, String kept) {
        String[] parts = kept.split(":", 2);
        if (parts.length != 2) {
            return false;
        }
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
