package org.skeinday.device;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** What is kept of a token. A random one of 128 bits needs no salt: there is nothing to guess from. */
public final class TokenHash {
    private TokenHash() {}

    /** @throws IllegalArgumentException when this is not what {@link #of} makes */
    static void check(String hash) {
        if (!hash.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException(
                    "A token's hash must be 64 hexadecimal digits, but was " + hash.length() + " characters");
        }
    }

    /** SHA-256 (FIPS 180-4) as 64 hexadecimal digits. */
    public static String of(String token) {
        try {
            byte[] sum = MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sum);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java has SHA-256", e);
        }
    }
}
