package org.skeinday.prepare.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import org.skeinday.platform.http.Refusal;

/**
 * Which rows of a long list a page shows: a season has thousands, and no page shall be heavier than a phone takes at once.
 *
 * @param page from 0
 */
record PartOfRows(int page) {
    /** Rows of one page. */
    static final int MOST = 50;

    /** @throws Refusal for what is no number */
    static PartOfRows of(Context ctx) {
        String asked = ctx.queryParam("page");
        if (asked != null && !asked.matches("\\d{1,6}")) {
            throw Refusal.notFound("There is no such page of this list.");
        }
        return new PartOfRows(asked == null ? 0 : Integer.parseInt(asked));
    }

    <T> List<T> of(List<T> all) {
        int from = Math.min(page * MOST, all.size());
        return all.subList(from, Math.min(from + MOST, all.size()));
    }

    /** To every page, in order; none where one page has all. @param address of the list */
    List<RowsView.PageLink> links(String address, int all) {
        List<RowsView.PageLink> links = new ArrayList<>();
        for (int first = 0; all > MOST && first < all; first += MOST) {
            int at = first / MOST;
            String words = (first + 1) + " to " + Math.min(first + MOST, all);
            links.add(new RowsView.PageLink(at == page ? "" : at == 0 ? address : address + "?page=" + at, words));
        }
        return links;
    }
}
