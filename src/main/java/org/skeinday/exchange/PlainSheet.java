package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A plain spreadsheet of somebody's own columns.
 *
 * @param rows as the spreadsheet counts them, the header first; a row that is not filled has no cells
 * @param errors why it could not be read; then there are no rows
 */
public record PlainSheet(List<List<String>> rows, List<CellError> errors) {
    public PlainSheet {
        rows = List.copyOf(rows);
        errors = List.copyOf(errors);
    }

    /** A CSV text, or the first sheet of a workbook. @param name of the file: its ending tells which */
    public static PlainSheet of(String name, byte[] bytes) {
        if (!name.toLowerCase(Locale.ROOT).endsWith(".xlsx")) {
            return of(name, FileText.decode(bytes));
        }
        Unpacked book = XlsxBook.read(name, bytes);
        return book.texts().entrySet().stream()
                .findFirst()
                .map(Map.Entry::getValue)
                .map(text -> of(name, text))
                .orElseGet(() -> new PlainSheet(List.of(), book.errors().isEmpty() ? nothing(name) : book.errors()));
    }

    /** A CSV text. */
    public static PlainSheet of(String name, String text) {
        List<CellError> errors = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (CsvLines.Line line : CsvLines.read(name, text, errors)) {
            while (rows.size() < line.number() - 1) {
                rows.add(List.of());
            }
            rows.add(line.cells().stream()
                    .map(cell -> CellText.unguarded(cell).replaceAll("\\s*[\\r\\n]+\\s*", " "))
                    .toList());
        }
        if (errors.isEmpty() && (rows.isEmpty() || rows.get(0).isEmpty())) {
            errors.addAll(nothing(name));
        }
        return new PlainSheet(errors.isEmpty() ? rows : List.of(), errors);
    }

    private static List<CellError> nothing(String name) {
        return List.of(
                new CellError(name, 1, "", "there is no header", "put the names of the columns into the first row"));
    }

    /** The same as text, one line for each row. */
    public String text() {
        return CsvLines.write(rows.stream()
                .map(row -> row.stream().map(CellText::guarded).toList())
                .toList());
    }

    public List<String> header() {
        return rows.isEmpty() ? List.of() : rows.get(0);
    }

    /** What the first filled row has there, empty for nothing. */
    public String sample(int place) {
        return rows.stream()
                .skip(1)
                .filter(row -> place < row.size() && !row.get(place).isBlank())
                .map(row -> row.get(place))
                .findFirst()
                .orElse("");
    }
}
