package org.skeinday.platform.record;

import java.security.SecureRandom;
import java.util.HexFormat;

/** What nobody guesses and nothing else is called: ids of acts and folders, tokens, join codes. */
public final class RandomHex {
    private static final int BYTES = 16;

    private RandomHex() {}

    /** 128 bits as 32 hexadecimal digits in small letters. */
    public static String of(SecureRandom random) {
        byte[] bytes = new byte[BYTES];
        random.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }
}
