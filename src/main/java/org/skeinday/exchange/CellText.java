package org.skeinday.exchange;

import java.util.regex.Pattern;

/**
 * Text as a cell holds it. A text that a spreadsheet would take for a formula (it starts with = + - @, a tab or other
 * space) is guarded by an apostrophe; so is one that already looks guarded, so that reading takes off just what writing
 * put on.
 */
final class CellText {
    private static final String FORMULA = "=+-@";

    /** Control characters but tab and line ends, and signs that turn the direction of writing around. */
    private static final Pattern STRANGE =
            Pattern.compile("[\\p{Cc}&&[^\\t\\n\\r]]|[\\u202A-\\u202E\\u2066-\\u2069]|[\\uFFFE\\uFFFF]"
                    + "|[\\uD800-\\uDBFF](?![\\uDC00-\\uDFFF])|(?<![\\uD800-\\uDBFF])[\\uDC00-\\uDFFF]");

    private CellText() {}

    /** Whether it holds a sign that cannot be seen or printed. */
    static boolean isStrange(String text) {
        return !isPlain(text) && STRANGE.matcher(text).find();
    }

    /** Most cells are: they need not be searched. */
    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < ' ' || text.charAt(i) > '~') {
                return false;
            }
        }
        return true;
    }

    /** What stands in the file for this text, before quotes. */
    static String guarded(String text) {
        String kept = lines(text).stripTrailing();
        boolean looksGuarded = kept.length() > 1 && kept.charAt(0) == '\'' && needsGuard(kept.charAt(1), true);
        return !kept.isEmpty() && (looksGuarded || needsGuard(kept.charAt(0), false)) ? "'" + kept : kept;
    }

    /** The text that a cell of a file stands for: without guard, or else without space around it. */
    static String unguarded(String cell) {
        String text = lines(cell);
        boolean guarded = text.length() > 1 && text.charAt(0) == '\'' && needsGuard(text.charAt(1), true);
        return guarded ? text.substring(1).stripTrailing() : text.strip();
    }

    private static boolean needsGuard(char first, boolean behindApostrophe) {
        return FORMULA.indexOf(first) >= 0 || Character.isWhitespace(first) || (behindApostrophe && first == '\'');
    }

    /** One kind of line end, whatever the system that wrote the file has. */
    private static String lines(String text) {
        return text.replace("\r\n", "\n").replace('\r', '\n');
    }
}
