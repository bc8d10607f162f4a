package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.time.Clock;
import org.skeinday.contest.EntryAdded;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** Which motor at which fraction on the attempts left: advice, and none while it is quiet. */
public final class ChoicePages {
    private final ActStore record;
    private final Page page;
    private final Clock clock;

    public ChoicePages(ActStore record, Page page, Clock clock) {
        this.clock = clock;
        this.record = record;
        this.page = page;
    }

    public void register(Routes routes) {
        routes.get("/choice/{entry}", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            page.show(ctx, "Attempts left", "attempt/choice.jte", view(ctx));
        });
    }

    private ChoiceView view(Context ctx) {
        String id = ctx.pathParam("entry");
        return record.read(tx -> Today.read(tx, clock.millis())
                .flatMap(today -> today.entries().stream()
                        .filter(e -> e.id().equals(id))
                        .filter(EntryAdded::own)
                        .findFirst()
                        .map(entry -> new ChoicePresenter(tx, today, entry).view()))
                .orElseThrow(() -> Refusal.notFound("There is no such entry of your own.")));
    }
}
