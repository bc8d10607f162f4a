package org.skeinday.platform.db;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.skeinday.platform.db.schema.DefaultSchema;

/** Every table's rows as text, so that two databases can be compared to the letter. */
public final class Tables {
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

    private static List<String> rows(Tx tx, org.jooq.Table<?> table) {
        List<String> rows = new ArrayList<>();
        for (var row : tx.sql().selectFrom(table).fetchMaps()) {
            rows.add(new TreeMap<>(row).toString());
        }
        rows.sort(null);
        return rows;
    }
}
