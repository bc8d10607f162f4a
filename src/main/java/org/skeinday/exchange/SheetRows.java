package org.skeinday.exchange;

import java.util.List;

/** One file as rows under a header. */
record SheetRows(String file, List<Column> columns, Header header, List<CsvLines.Line> rows) {

    /** Reads a file; what is wrong with it as a whole or with its header goes into {@code errors}. */
    static SheetRows read(String file, String text, List<Column> columns, List<CellError> errors) {
        List<CsvLines.Line> lines = CsvLines.read(file, text, errors);
        if (text.isBlank()
                || (lines.isEmpty() && errors.stream().noneMatch(e -> e.file().equals(file)))) {
            errors.add(new CellError(
                    file,
                    0,
                    "",
                    "the file is empty",
                    "leave it out, or begin it with the line: "
                            + String.join(
                                    ",", columns.stream().map(Column::name).toList())));
        }
        if (lines.isEmpty()) {
            return new SheetRows(file, columns, Header.none(), List.of());
        }
        Header header = Header.read(file, lines.get(0), columns, errors);
        return new SheetRows(file, columns, header, lines.subList(1, lines.size()));
    }

    Column column(String name) {
        for (Column column : columns) { // asked for each cell of a file: no stream for it
            if (column.name().equals(name)) {
                return column;
            }
        }
        throw new IllegalStateException(file + " has no column '" + name + "'");
    }
}
