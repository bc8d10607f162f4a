package org.skeinday.prepare.web;

import java.util.List;

/**
 * All things of one kind, in finished words.
 *
 * @param toDo what to do first when there is none
 */
public record RowsView(String title, String one, String address, String toDo, List<String> columns, List<Row> rows) {
    /** One thing. @param notes what is still to be done about it */
    public record Row(String address, List<String> cells, List<String> notes) {}
}
