package org.skeinday.paper.web;

import java.util.List;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.PageHelp;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.steps.Cautions;

/** What each page is for, on one sheet of paper. */
public final class GuidePages {
    private final Page page;
    private final GuideView view;

    public GuidePages(Page page, List<PageHelp> pages) {
        this.page = page;
        this.view = new GuideView(
                pages, Cautions.named("eyes", "past-the-ends", "both-ends-live", "anyone-says-stop", "venue-rules"));
    }

    public void register(Routes routes) {
        routes.get("/guide", Role.VIEWER, ctx -> page.show(ctx, "Guide", "paper/guide.jte", view));
    }
}
