package org.skeinday.platform.db;

import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.jooq.Table;
import org.jooq.TableField;
import org.jooq.TableRecord;
import org.jooq.UpdatableRecord;

/** Facts, which are records whose components carry the names of a table's columns, as rows of it. */
public final class Rows {
    private static final Map<Kind, RowShape> SHAPES = new ConcurrentHashMap<>();

    private record Kind(Table<?> table, Class<?> type) {}

    private Rows() {}

    private static RowShape shape(Table<?> table, Object fact) {
        return SHAPES.computeIfAbsent(new Kind(table, fact.getClass()), kind -> RowShape.of(kind.table(), kind.type()));
    }

    public static <R extends TableRecord<R>> BiConsumer<Tx, Object> into(Table<R> table) {
        return (tx, fact) -> insert(tx, shape(table, fact), fact);
    }

    /** Every column of the row with the fact's key. */
    public static <R extends UpdatableRecord<R>> BiConsumer<Tx, Object> change(Table<R> table) {
        return (tx, fact) -> update(tx, shape(table, fact), fact);
    }

    /** A new row, or every column of the one with the fact's key. */
    public static <R extends UpdatableRecord<R>> BiConsumer<Tx, Object> put(Table<R> table) {
        return (tx, fact) -> {
            RowShape shape = shape(table, fact);
            if (update(tx, shape, fact) == 0) {
                insert(tx, shape, fact);
            }
        };
    }

    private static void insert(Tx tx, RowShape shape, Object fact) {
        tx.prepared().run(shape.insert, shape.toInsert(fact));
    }

    private static int update(Tx tx, RowShape shape, Object fact) {
        return tx.prepared().run(shape.update, shape.toUpdate(fact));
    }

    /** A column of a row and its new value. */
    public record Value<R extends TableRecord<R>, T>(TableField<R, T> column, T value) {}

    /** Some columns of the row whose key this is, for facts that are no whole row; the same ones again and again. */
    @SafeVarargs
    public static <R extends TableRecord<R>> void set(
            Tx tx, TableField<R, String> key, String of, Value<R, ?>... values) {
        Object[] all = Stream.concat(Stream.of(values).map(Value::value), Stream.of(of))
                .toArray();
        tx.prepared().run(RowShape.setting(key, Stream.of(values).map(Value::column)), all);
    }

    /** All rows of a table that have this value. */
    public static void remove(Tx tx, TableField<?, String> column, String value) {
        tx.sql()
                .deleteFrom(Objects.requireNonNull(column.getTable()))
                .where(column.eq(value))
                .execute();
    }
}
