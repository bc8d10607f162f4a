package org.skeinday.exchange;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Files that came in one: a workbook, a bundle.
 *
 * @param texts by file name
 * @param errors why it could not be read; then there are no texts
 */
public record Unpacked(Map<String, String> texts, List<CellError> errors) {
    private static final String WORKBOOK = ".xlsx";
    private static final String BUNDLE = ".json";

    /** Whether a file of this name holds others. */
    public static boolean isOne(String name) {
        return ends(name, WORKBOOK) || isBundle(name);
    }

    public static boolean isBundle(String name) {
        return ends(name, BUNDLE);
    }

    private static boolean ends(String name, String ending) {
        return name.toLowerCase(Locale.ROOT).endsWith(ending);
    }

    /** @param name of the file: its ending tells what it is, and its errors name it */
    public static Unpacked of(String name, byte[] bytes) {
        return isBundle(name) ? Bundle.read(name, FileText.decode(bytes)) : XlsxBook.read(name, bytes);
    }
}
