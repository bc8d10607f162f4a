package org.skeinday.review.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.review.RecordSearch;

/** Search over the whole record: flights are among it, so it is not served while it is quiet. */
public final class SearchPages {
    private static final int LONGEST = 200;

    private final ActStore record;
    private final Page page;
    private final Clock clock;

    public SearchPages(ActStore record, Page page, Clock clock) {
        this.record = record;
        this.page = page;
        this.clock = clock;
    }

    public void register(Routes routes) {
        routes.advice("/search", Role.CAPTAIN, this::search);
    }

    private void search(Context ctx) {
        String typed = ctx.queryParam("q");
        String asked = typed == null ? "" : typed.strip();
        String shortened = asked.length() > LONGEST ? asked.substring(0, LONGEST) : asked;
        List<RecordSearch.Item> items =
                record.read(tx -> new SearchItems(tx, record.people().names(), clock.getZone()).all());
        List<RecordSearch.Item> found = new RecordSearch(items).find(shortened);
        List<SearchView.Hit> hits = found.stream()
                .map(i -> new SearchView.Hit(i.kind().words(), i.title(), i.text(), SearchItems.address(i)))
                .toList();
        page.show(ctx, "Search", "review/search.jte", new SearchView(shortened, hits, hits.size() < RecordSearch.MOST));
    }
}
