package org.skeinday.prepare.web;

import java.util.List;

/**
 * A plain spreadsheet on its way into the record.
 *
 * @param file what its rows are, for example flights.csv; {@code text} the spreadsheet itself
 * @param problem why nothing can be shown or was taken, empty when all is well
 * @param taken whether it is in the record now
 * @param wrong cells, in words; empty when all are right
 * @param head and {@code rows} of the preview
 */
public record HistoryView(
        String file,
        String text,
        String problem,
        boolean taken,
        String words,
        List<Column> columns,
        List<Same> same,
        List<String> wrong,
        List<String> head,
        List<List<String>> rows) {
    /** A column of the spreadsheet. */
    public record Column(int place, String header, String sample, List<Meaning> meanings, String unit) {}

    public record Meaning(String name, boolean chosen) {}

    /** A column of the record that no place means yet, and the one value that all rows have. */
    public record Same(String column, boolean must, String value) {}

    static HistoryView nothing(String problem) {
        return new HistoryView("", "", problem, false, "", List.of(), List.of(), List.of(), List.of(), List.of());
    }
}
