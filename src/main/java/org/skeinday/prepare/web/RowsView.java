package org.skeinday.prepare.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All things of one kind, in finished words.
 *
 * @param toDo what to do first when there is none
 * @param saved what was saved just before; null when nothing was
 * @param pages where the rows are too many for one page, all its pages
 */
public record RowsView(
        String title,
        String one,
        String address,
        String toDo,
        List<String> columns,
        List<Row> rows,
        @Nullable Saved saved,
        List<PageLink> pages) {
    /** A page of rows. @param address empty for the one that is shown */
    public record PageLink(String address, String words) {}

    /** @param address of the next step @param next its words */
    public record Saved(String words, String address, String next) {}

    /**
     * One thing.
     *
     * @param notes what is still to be done about it
     * @param confirm what the coach may confirm with one button; null when there is nothing
     */
    public record Row(
            String address,
            List<String> cells,
            List<String> notes,
            @Nullable Confirm confirm) {}

    /** @param id of the row @param winds to be taken in as clean winds */
    public record Confirm(String id, int winds, String words) {}
}
