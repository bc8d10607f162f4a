package org.skeinday.platform.db;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.Field;
import org.jooq.Table;
import org.jooq.TableField;
import org.jooq.UniqueKey;
import org.jooq.tools.StringUtils;
import org.jspecify.annotations.Nullable;

/**
 * How the facts of one class become rows of one table: its statements and what reads each value, found once. A column
 * takes the component of its name ({@code at_ms} that of {@code atMs}); one that the fact does not have is left alone.
 */
final class RowShape {
    private static final MethodType READS = MethodType.methodType(Object.class, Object.class);

    private final List<Cell> cells;
    private final List<Cell> changes;
    final String insert;
    final String update;

    /** A column and what reads its value of a fact. */
    private record Cell(Field<?> column, boolean isKey, MethodHandle reads) {
        @Nullable
        Object of(Object fact) {
            try {
                Object value = (Object) reads.invokeExact(fact);
                return value == null || column.getType().isInstance(value)
                        ? value
                        : column.getDataType().convert(value);
            } catch (RuntimeException | Error e) {
                throw e;
            } catch (Throwable e) {
                throw new IllegalStateException("A component of a record throws nothing else", e);
            }
        }

        private String name() {
            return quoted(column.getName());
        }
    }

    private RowShape(Table<?> table, List<Cell> cells) {
        this.cells = cells;
        List<Cell> keys = cells.stream().filter(Cell::isKey).toList();
        List<Cell> others = cells.stream().filter(cell -> !cell.isKey()).toList();
        List<Cell> set = others.isEmpty() ? keys : others; // a row that is all key is found by setting it to itself
        this.changes = Stream.concat(set.stream(), keys.stream()).toList();
        String name = quoted(table.getName());
        this.insert =
                "insert into " + name + " (" + cells.stream().map(Cell::name).collect(Collectors.joining(", "))
                        + ") values (" + cells.stream().map(cell -> "?").collect(Collectors.joining(", ")) + ")";
        this.update = "update " + name + " set " + equal(set, ", ") + " where " + equal(keys, " and ");
    }

    /** @return an update of these columns in the row that the key's value finds */
    static <R extends org.jooq.Record> String setting(TableField<R, ?> key, Stream<? extends Field<?>> columns) {
        Table<?> table = Objects.requireNonNull(key.getTable(), "a key is a table's");
        return "update " + quoted(table.getName()) + " set "
                + columns.map(column -> quoted(column.getName()) + " = ?").collect(Collectors.joining(", "))
                + " where " + quoted(key.getName()) + " = ?";
    }

    private static String equal(List<Cell> cells, String between) {
        return cells.stream().map(cell -> cell.name() + " = ?").collect(Collectors.joining(between));
    }

    private static String quoted(String name) {
        return '"' + name + '"';
    }

    /** @param type a record */
    static RowShape of(Table<?> table, Class<?> type) {
        Map<String, RecordComponent> components = new HashMap<>();
        for (RecordComponent component : type.getRecordComponents()) {
            components.put(component.getName(), component);
        }
        UniqueKey<?> key = table.getPrimaryKey();
        List<Cell> cells = new ArrayList<>();
        for (Field<?> column : table.fields()) {
            RecordComponent component = components.get(StringUtils.toCamelCaseLC(column.getName()));
            if (component != null) {
                boolean isKey = key != null && key.getFields().contains(column);
                cells.add(new Cell(column, isKey, reads(component)));
            }
        }
        return new RowShape(table, cells);
    }

    private static MethodHandle reads(RecordComponent component) {
        try {
            var accessor = component.getAccessor();
            accessor.setAccessible(true); // facts of tests are not public
            return MethodHandles.lookup().unreflect(accessor).asType(READS);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException("The component " + component + " cannot be read", e);
        }
    }

    /** What {@link #insert} asks for. */
    @Nullable
    Object[] toInsert(Object fact) {
        return values(cells, fact);
    }

    /** What {@link #update} asks for. */
    @Nullable
    Object[] toUpdate(Object fact) {
        return values(changes, fact);
    }

    private static @Nullable Object[] values(List<Cell> cells, Object fact) {
        @Nullable Object[] values = new @Nullable Object[cells.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = cells.get(i).of(fact);
        }
        return values;
    }
}
