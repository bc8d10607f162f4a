package org.skeinday.exchange;

import java.util.List;

/** Tells a picture, an archive or any other file of bytes from a table, before its rows are looked for. */
final class NotText {
    /** How such files begin: archives and workbooks, PDF, PNG, JPEG, GIF, old workbooks. */
    private static final List<String> BEGIN = List.of(
            "PK\u0003\u0004",
            "%PDF-",
            "\u0089PNG",
            "\u2030PNG",
            "\u00ff\u00d8\u00ff",
            "GIF8",
            "\u00d0\u00cf\u0011\u00e0");

    private static final int LOOKED_AT = 4_000;

    /** Own default: one sign in so many that cannot be typed. */
    private static final int ONE_IN = 20;

    private NotText() {}

    static boolean is(String text) {
        String begin = text.substring(0, Math.min(LOOKED_AT, text.length()));
        long strange = begin.chars().filter(NotText::cannotBeTyped).count();
        return BEGIN.stream().anyMatch(begin::startsWith) || (strange > 2 && strange * ONE_IN > begin.length());
    }

    private static boolean cannotBeTyped(int sign) {
        return Character.isISOControl(sign) && sign != '\t' && sign != '\n' && sign != '\r';
    }
}
