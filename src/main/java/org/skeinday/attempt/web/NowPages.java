package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import org.skeinday.attempt.action.AttemptDeeds;
import org.skeinday.attempt.action.CloseAttempt;
import org.skeinday.contest.EntryAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Record;

/** Now: the next attempt, and the deeds that move it on. */
public final class NowPages {
    private final Record record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;

    public NowPages(Record record, FormActs forms, Page page, Clock clock) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
    }

    public void register(Routes routes) {
        routes.get("/", Role.VIEWER, ctx -> page.show(ctx, "Now", "attempt/now.jte", view(ctx, "")));
        routes.get("/now", Role.VIEWER, ctx -> part(ctx, ""));
        routes.post(
                "/attempt/call",
                Role.CAPTAIN,
                ctx -> deed(
                        ctx,
                        "attempt.call",
                        new AttemptDeeds.Call(field(ctx, "entry"), ctx.formParam("model"), ctx.formParam("motor"))));
        routes.post(
                "/attempt/move",
                Role.CAPTAIN,
                ctx -> deed(ctx, "attempt.move", new AttemptDeeds.Move(field(ctx, "attempt"), field(ctx, "to"))));
        routes.post(
                "/attempt/give-up",
                Role.CAPTAIN,
                ctx -> deed(
                        ctx, "attempt.give-up", new AttemptDeeds.GiveUp(field(ctx, "attempt"), field(ctx, "reason"))));
        routes.post(
                "/attempt/close",
                Role.CAPTAIN,
                ctx -> deed(ctx, "attempt.close", new CloseAttempt.Close(field(ctx, "attempt"))));
    }

    static String field(Context ctx, String name) {
        String value = ctx.formParam(name);
        return value == null ? "" : value;
    }

    private void deed(Context ctx, String kind, Object content) {
        part(ctx, FormActs.words(ctx, forms.submit(ctx, kind, content)));
    }

    private void part(Context ctx, String message) {
        page.fragment(ctx, "attempt/_now.jte", view(ctx, message));
    }

    private NowView view(Context ctx, String message) {
        boolean mayAct = Access.callerOf(ctx).role().covers(Role.CAPTAIN);
        return record.read(tx -> Today.read(tx)
                .map(today -> view(tx, today, message, mayAct))
                .orElse(new NowView("No event yet", "", message, null, List.of(), mayAct)));
    }

    private NowView view(Tx tx, Today today, String message, boolean mayAct) {
        List<NowView.EntryLine> lines =
                today.entries().stream().map(entry -> line(today, entry)).toList();
        return new NowView(
                today.event().name(),
                Words.rules(today.event()),
                message,
                new CardOf(tx, today, forms::newId).card(clock.millis()),
                lines,
                mayAct);
    }

    private NowView.EntryLine line(Today today, EntryAdded entry) {
        boolean left = today.hasAttemptLeft(entry);
        String state = today.of(entry).stream()
                .filter(a -> a.state().isOpen())
                .map(a -> Words.cell(a, today.event()))
                .findFirst()
                .orElse(left ? "waiting" : "done");
        return new NowView.EntryLine(
                entry.name(),
                entry.team(),
                Words.window(today, entry, clock.getZone()),
                Words.times(today, entry),
                state,
                entry.id(),
                left ? forms.newId() : "");
    }
}
