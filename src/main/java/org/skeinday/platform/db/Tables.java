package org.skeinday.platform.db;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.schema.DefaultSchema;

/** Every table's rows as text, so that two databases can be compared to the letter. */
public final class Tables {
    private static final Set<String> INNER = Set.of("ACT", "POSITION");
    private static final String SECRET = "_HASH";

    private Tables() {}

    /** The first difference between two databases, in words; empty when every table has the same rows. */
    public static Optional<String> difference(Tx one, Tx other) {
        for (var table : DefaultSchema.DEFAULT_SCHEMA.getTables()) {
            List<String> here = rows(one, table);
            List<String> there = rows(other, table);
            for (int i = 0; i < Math.max(here.size(), there.size()); i++) {
                String a = i < here.size() ? here.get(i) : "no row";
                String b = i < there.size() ? there.get(i) : "no row";
                if (!a.equals(b)) {
                    return Optional.of(
                            "table " + table.getName() + ": the database has " + a + ", the record says " + b);
                }
            }
        }
        return Optional.empty();
    }

    /**
     * Every table as it stands, by its name: the names of its columns, then its rows as text, an empty cell for nothing.
     * What opens a device's session is left out, and what only the program needs.
     */
    public static Map<String, List<List<String>>> texts(Tx tx) {
        Map<String, List<List<String>>> texts = new TreeMap<>();
        for (var table : DefaultSchema.DEFAULT_SCHEMA.getTables()) {
            if (!INNER.contains(table.getName())) {
                texts.put(table.getName().toLowerCase(Locale.ROOT), texts(tx, table));
            }
        }
        return texts;
    }

    private static List<List<String>> texts(Tx tx, org.jooq.Table<?> table) {
        var shown = Stream.of(table.fields())
                .filter(f -> !f.getName().endsWith(SECRET))
                .toList();
        List<List<String>> rows = new ArrayList<>();
        rows.add(shown.stream().map(f -> f.getName().toLowerCase(Locale.ROOT)).toList());
        for (var row : tx.sql().select(shown).from(table).orderBy(shown).fetch()) {
            rows.add(shown.stream().map(f -> text(row.get(f))).toList());
        }
        return rows;
    }

    private static String text(@Nullable Object value) {
        return value instanceof Double number
                ? BigDecimal.valueOf(number).stripTrailingZeros().toPlainString()
                : value == null ? "" : value.toString();
    }

    private static List<String> rows(Tx tx, org.jooq.Table<?> table) {
        List<String> rows = new ArrayList<>();
        for (var row : tx.sql().selectFrom(table).fetchMaps()) {
            rows.add(new TreeMap<>(row).toString());
        }
        rows.sort(null);
        return rows;
    }
}
