package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Every table of the record as a CSV file, for tools of one's own: written and not read, since the files of
 * {@link DayFiles} and a backup are what comes in again. Units stand in the headers; beside the id of a person stands the
 * name.
 */
public final class RecordTables {
    /** What follows the name of a column in the database, and how a header says it. */
    private static final Map<String, String> UNITS = units();

    /** Columns with the id of a person, and the header of the name that stands beside each. */
    private static final Map<String, String> PEOPLE = Map.of(
            "person_id", "person name",
            "adult_id", "adult name",
            "by_person", "by person name",
            "person", "person name");

    private RecordTables() {}

    private static Map<String, String> units() {
        Map<String, String> units = new LinkedHashMap<>();
        units.put("_at_ms", " at (ms since 1970 UTC)");
        units.put("_nmm", " (N·mm)");
        units.put("_mps", " (m/s)");
        units.put("_mm", " (mm)");
        units.put("_ms", " (ms)");
        units.put("_g", " (g)");
        units.put("_n", " (N)");
        units.put("_s", " (s)");
        units.put("celsius", "celsius (°C)");
        units.put("humidity", "humidity (%)");
        return units;
    }

    /**
     * CSV by file name.
     *
     * @param tables by name: the names of the columns, then the rows
     * @param people person id to display name
     */
    public static Map<String, String> write(Map<String, List<List<String>>> tables, Map<String, String> people) {
        Map<String, String> texts = new LinkedHashMap<>();
        tables.forEach((name, rows) -> texts.put(file(name), text(rows, people)));
        return texts;
    }

    /** For example {@code motor_batch} is in {@code motor-batch.csv}. */
    public static String file(String table) {
        return table.replace('_', '-') + ".csv";
    }

    private static String text(List<List<String>> rows, Map<String, String> people) {
        List<String> columns = rows.get(0);
        List<List<String>> lines = new ArrayList<>();
        for (List<String> row : rows) {
            boolean isHeader = row == columns;
            List<String> cells = new ArrayList<>();
            for (int c = 0; c < row.size(); c++) {
                cells.add(CellText.guarded(isHeader ? header(row.get(c)) : row.get(c)));
                String beside = PEOPLE.get(columns.get(c));
                if (beside != null) {
                    cells.add(CellText.guarded(isHeader ? beside : name(row.get(c), people)));
                }
            }
            lines.add(cells);
        }
        return CsvLines.write(lines);
    }

    private static String name(String id, Map<String, String> people) {
        return id.isEmpty() ? "" : people.getOrDefault(id, "someone");
    }

    /** For example {@code loop_mm} is {@code loop (mm)}. */
    static String header(String column) {
        if (column.equals("at_ms")) {
            return "at (ms since 1970 UTC)";
        }
        for (Map.Entry<String, String> unit : UNITS.entrySet()) {
            if (column.endsWith(unit.getKey())) {
                return column.substring(0, column.length() - unit.getKey().length())
                                .replace('_', ' ')
                        + unit.getValue();
            }
        }
        return column.replace('_', ' ');
    }
}
