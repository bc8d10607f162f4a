package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** The rows of one file in the making. Their order depends on what they say only, never on how they are stored. */
final class Table {
    private final List<Column> columns;
    private final List<Line> lines = new ArrayList<>();

    private record Line(List<String> order, String[] cells) {}

    Table(List<Column> columns) {
        this.columns = columns;
    }

    /** One row, filled in by the names of its columns; what is not put stays empty. */
    final class Cells {
        private final String[] cells = new String[columns.size()];

        private Cells() {
            Arrays.fill(cells, "");
        }

        Cells put(String column, @org.jspecify.annotations.Nullable String text) {
            cells[index(column)] = text == null ? "" : CellText.guarded(text);
            return this;
        }
    }

    private int index(String column) {
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).name().equals(column)) {
                return i;
            }
        }
        throw new IllegalStateException("There is no column '" + column + "'");
    }

    /** @param order what the rows are sorted by; rows alike in it are sorted by their cells */
    Cells line(String... order) {
        var cells = new Cells();
        lines.add(new Line(List.of(order), cells.cells));
        return cells;
    }

    /** A number so that it sorts as one. */
    static String order(long number) {
        return String.format("%020d", number);
    }

    int size() {
        return lines.size();
    }

    /** The header, then the rows. */
    List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(columns.stream().map(Column::name).toList());
        lines.stream()
                .sorted(Comparator.comparing((Line line) -> String.join("\u0000", line.order()))
                        .thenComparing(line -> String.join("\u0000", line.cells())))
                .forEach(line -> rows.add(List.of(line.cells())));
        return rows;
    }
}
