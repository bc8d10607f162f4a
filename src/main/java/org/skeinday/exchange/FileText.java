package org.skeinday.exchange;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/**
 * A spreadsheet's bytes as text: UTF-16 when a byte order mark says so, UTF-8 with or without one, else Windows-1252.
 */
public final class FileText {
    private static final Pattern HINT = Pattern.compile("\\A\"?sep=.\"?(?=\\r?\\n)");

    private FileText() {}

    public static String decode(byte[] bytes) {
        return withoutHint(text(bytes));
    }

    /** Some spreadsheets begin with a line {@code sep=;}: it is left empty, so that lines keep their numbers. */
    private static String withoutHint(String text) {
        return HINT.matcher(text).replaceFirst("");
    }

    private static String text(byte[] bytes) {
        if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
            return new String(bytes, StandardCharsets.UTF_16);
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            return new String(bytes, Charset.forName("windows-1252"));
        }
    }

    private static boolean startsWith(byte[] bytes, int first, int second) {
        return bytes.length >= 2 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
    }
}
