package org.skeinday.platform.record;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 in hexadecimal. */
public final class Sha {
    private Sha() {}

    public static String hex(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return hex(bytes, bytes.length);
    }

    static String hex(byte[] bytes, int length) {
        MessageDigest digest = digest();
        digest.update(bytes, 0, length);
        return HexFormat.of().formatHex(digest.digest());
    }

    static String ofFile(Path file) throws IOException {
        MessageDigest digest = digest();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }
}
