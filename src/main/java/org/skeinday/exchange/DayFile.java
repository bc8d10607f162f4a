package org.skeinday.exchange;

import java.util.List;

/** One kind of file: its name and columns, how its rows become facts, and how a day becomes its rows. */
interface DayFile {
    String name();

    /** For import and export alike, in the order in which export writes them. */
    List<Column> columns();

    /** Takes one row in; what is wrong is noted in the row. */
    void take(Row row, ImportContext context);

    /** Looks at all rows together, once they are in. */
    default void finish(ImportContext context) {}

    void put(ExportContext book, Table table);
}
