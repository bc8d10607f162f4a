package org.skeinday.device;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** What is kept of a token. A random one of 128 bits needs no salt: there is nothing to guess from. */
public final class TokenHash {
    private TokenHash() {}

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
