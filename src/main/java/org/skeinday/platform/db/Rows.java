package org.skeinday.platform.db;

import java.util.Objects;
import java.util.function.BiConsumer;
import org.jooq.Table;
import org.jooq.TableField;
import org.jooq.TableRecord;
import org.jooq.UpdatableRecord;

/** Facts whose fields carry the names of a table's columns, as rows of it. */
public final class Rows {
    private Rows() {}

    public static <R extends TableRecord<R>> BiConsumer<Tx, Object> into(Table<R> table) {
        return (tx, fact) -> tx.sql().executeInsert(tx.sql().newRecord(table, fact));
    }

    /** Every column of the row with the fact's key. */
    public static <R extends UpdatableRecord<R>> BiConsumer<Tx, Object> change(Table<R> table) {
        return (tx, fact) -> tx.sql().executeUpdate(tx.sql().newRecord(table, fact));
    }

    /** A new row, or every column of the one with the fact's key. */
    public static <R extends UpdatableRecord<R>> BiConsumer<Tx, Object> put(Table<R> table) {
        return (tx, fact) -> {
            R row = tx.sql().newRecord(table, fact);
            if (tx.sql().executeUpdate(row) == 0) {
                tx.sql().executeInsert(row);
            }
        };
    }

    /** All rows of a table that have this value. */
    public static void remove(Tx tx, TableField<?, String> column, String value) {
        tx.sql()
                .deleteFrom(Objects.requireNonNull(column.getTable()))
                .where(column.eq(value))
                .execute();
    }
}
