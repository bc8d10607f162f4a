package org.skeinday;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jooq.Record;
import org.skeinday.platform.db.Tx;

/**
 * Tables as text that can be read and compared: a line with the table's name and columns, then each row, sorted; a value
 * stands in quotes, nothing stands for null. What a later program has added beside these columns does not count.
 */
final class TableText {
    /** What made the tables, not what was recorded. */
    private static final String MADE = "schema_made";

    private TableText() {}

    /** By table: first its columns, then its rows. */
    static Map<String, List<String>> read(String text) {
        Map<String, List<String>> tables = new TreeMap<>();
        List<String> lines = List.of();
        for (String line : text.strip().split("\n", -1)) {
            int name = line.indexOf(": ");
            if (!line.startsWith("'") && !line.startsWith("|") && name > 0) {
                lines = new ArrayList<>(List.of(line.substring(name + 2)));
                tables.put(line.substring(0, name), lines);
            } else {
                lines.add(line);
            }
        }
        return tables;
    }

    /** The same of a database. @param columns parted by a stroke */
    static List<String> lines(Tx tx, String table, String columns) {
        List<String> names = List.of(columns.split("[|]", -1));
        List<String> lines = new ArrayList<>(List.of(columns));
        tx.sql().fetch("select * from \"" + table.toUpperCase(Locale.ROOT) + "\"").stream()
                .map(row -> names.stream().map(name -> quoted(row, name)).collect(Collectors.joining("|")))
                .sorted()
                .distinct()
                .forEach(lines::add);
        return lines;
    }

    private static String quoted(Record row, String column) {
        String value = row.get(column.toUpperCase(Locale.ROOT), String.class);
        return value == null ? "" : "'" + value.replace("\n", "\\n") + "'";
    }

    /** The tables that hold something, by name. */
    static List<String> filled(Tx tx) {
        return tx
                .sql()
                .fetch("select table_name from information_schema.tables where table_schema = 'PUBLIC' order by 1")
                .getValues(0, String.class)
                .stream()
                .filter(table -> !tx.sql()
                        .fetch("select * from \"" + table + "\" limit 1")
                        .isEmpty())
                .map(table -> table.toLowerCase(Locale.ROOT))
                .filter(table -> !table.equals(MADE))
                .toList();
    }
}
