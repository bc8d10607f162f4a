package org.skeinday.exchange;

import java.util.List;

/** Rows as CSV by RFC 4180, with cells that a spreadsheet would run kept from it. */
public final class CsvText {
    private CsvText() {}

    /** @param rows the header first */
    public static String of(List<List<String>> rows) {
        return CsvLines.write(rows.stream()
                .map(row -> row.stream().map(CellText::guarded).toList())
                .toList());
    }
}
