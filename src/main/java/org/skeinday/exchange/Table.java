package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The rows of one file in the making. Their order depends on what they say only, never on how they are stored. */
final class Table {
    private final List<Column> columns;
    private final List<Line> lines = new ArrayList<>();

    private record Line(List<String> order, Cells cells) {}

    Table(List<Column> columns) {
        this.columns = columns;
    }

    /** One row, filled in by the names of its columns; what is not put stays empty. */
    final class Cells {
        private final String[] cells = new String[columns.size()];
        private String id = "";

        private Cells() {
            Arrays.fill(cells, "");
        }

        /** Which thing of the record the row is about. */
        Cells of(String thing) {
            id = thing;
            return this;
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
        lines.add(new Line(List.of(order), cells));
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
        sorted().forEach(cells -> rows.add(List.of(cells.cells)));
        return rows;
    }

    private Stream<Cells> sorted() {
        return lines.stream()
                .sorted(Comparator.comparing((Line line) -> String.join("\u0000", line.order()))
                        .thenComparing(line -> String.join("\u0000", line.cells().cells)))
                .map(Line::cells);
    }

    /** The rows as a form shows them, by column. */
    List<DayRows.RowText> texts() {
        return sorted().map(cells -> {
                    Map<String, String> texts = new LinkedHashMap<>();
                    for (int i = 0; i < cells.cells.length; i++) {
                        texts.put(columns.get(i).name(), CellText.unguarded(cells.cells[i]));
                    }
                    return new DayRows.RowText(cells.id, texts);
                })
                .toList();
    }
}
