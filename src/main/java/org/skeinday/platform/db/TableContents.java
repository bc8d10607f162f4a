package org.skeinday.platform.db;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.UniqueKey;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.schema.DefaultSchema;

/** Every table's rows as text, so that two databases can be compared to the letter. */
public final class TableContents {
    private static final Set<String> INNER = Set.of("ACT", "POSITION");
    private static final String SECRET = "_HASH";
    private static final int PAGE = 5_000;

    private TableContents() {}

    /** The first difference between two databases, in words; empty when every table has the same rows. */
    public static Optional<String> difference(Tx one, Tx other) {
        return DefaultSchema.DEFAULT_SCHEMA.getTables().stream()
                .map(table -> difference(one, other, table))
                .flatMap(Optional::stream)
                .findFirst();
    }

    /** In the order of their keys and page by page: a season's rows would not fit into memory beside each other. */
    private static Optional<String> difference(Tx one, Tx other, org.jooq.Table<?> table) {
        @Nullable Object[] after = {};
        while (true) {
            List<Record> here = page(one, table, after);
            List<Record> there = page(other, table, after);
            for (int i = 0; i < Math.max(here.size(), there.size()); i++) {
                Record a = i < here.size() ? here.get(i) : null;
                Record b = i < there.size() ? there.get(i) : null;
                if (a == null || b == null || !Arrays.equals(a.intoArray(), b.intoArray())) {
                    return Optional.of("table " + table.getName() + ": the database has " + row(a)
                            + ", the record says " + row(b));
                }
            }
            if (here.size() < PAGE) {
                return Optional.empty();
            }
            Record last = here.get(here.size() - 1);
            after = key(table).stream().map(last::get).toArray();
        }
    }

    private static List<Record> page(Tx tx, org.jooq.Table<?> table, @Nullable Object[] after) {
        var ordered = tx.sql().select(table.fields()).from(table).orderBy(key(table));
        return new ArrayList<>(
                after.length == 0
                        ? ordered.limit(PAGE).fetch()
                        : ordered.seek(after).limit(PAGE).fetch());
    }

    /** All of a row's values where it has no key. */
    private static List<Field<?>> key(org.jooq.Table<?> table) {
        UniqueKey<?> key = table.getPrimaryKey();
        return key == null ? List.of(table.fields()) : List.copyOf(key.getFields());
    }

    private static String row(@Nullable Record row) {
        return row == null ? "no row" : new TreeMap<>(row.intoMap()).toString();
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
}
