package org.skeinday.exchange;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One file as rows under a header. A header may carry a unit: {@code loop (in)}, {@code mass [g]}.
 *
 * @param units by column, empty where the header has none
 */
record Sheet(String file, Map<String, Integer> columns, Map<String, String> units, List<CsvRecord> rows) {
    private static final Pattern HEADER = Pattern.compile("([^(\\[]*)(?:[(\\[]([^)\\]]*)[)\\]])?\\s*");

    /** Reads a file; what is wrong with its header goes into {@code errors}. */
    static Sheet read(String file, String text, List<String> known, List<CellError> errors) {
        Map<String, Integer> columns = new HashMap<>();
        Map<String, String> units = new HashMap<>();
        List<CsvRecord> rows = rows(file, text, errors);
        if (!rows.isEmpty()) {
            CsvRecord header = rows.remove(0);
            for (int i = 0; i < header.getFieldCount(); i++) {
                header(file, header.getField(i), i, known, columns, units, errors);
            }
        }
        return new Sheet(file, columns, units, rows);
    }

    private static List<CsvRecord> rows(String file, String text, List<CellError> errors) {
        List<CsvRecord> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(separator(text))
                .skipEmptyLines(true)
                .ofCsvRecord(text)) {
            reader.forEach(rows::add);
        } catch (CsvParseException | java.io.IOException e) {
            errors.add(new CellError(file, rows.size() + 1, "", "the quotes do not close: " + e.getMessage()));
        }
        return rows;
    }

    private static char separator(String text) {
        String header = text.lines().findFirst().orElse("");
        for (char separator : new char[] {';', '\t'}) {
            if (header.indexOf(separator) >= 0) {
                return separator;
            }
        }
        return ',';
    }

    private static void header(
            String file,
            String typed,
            int index,
            List<String> known,
            Map<String, Integer> columns,
            Map<String, String> units,
            List<CellError> errors) {
        Matcher parts = HEADER.matcher(typed.strip());
        String name = plain(parts.matches() ? parts.group(1) : typed);
        if (!known.contains(name)) {
            errors.add(new CellError(
                    file, 1, typed, "this column is not known here; known are " + String.join(", ", known)));
        } else if (columns.putIfAbsent(name, index) != null) {
            errors.add(new CellError(file, 1, typed, "this column is there twice; keep one"));
        } else {
            units.put(
                    name,
                    parts.matches() && parts.group(2) != null ? parts.group(2).strip() : "");
        }
    }

    private static String plain(String typed) {
        return typed.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
    }

    String cell(CsvRecord row, String column) {
        Integer index = columns.get(column);
        return index == null || index >= row.getFieldCount()
                ? ""
                : row.getField(index).strip();
    }
}
