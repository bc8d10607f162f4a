package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.util.HashMap;
import java.util.Map;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** What comes before anything else stands on top of every page, until somebody has answered. */
public final class FirstPages {
    private static final String TEMPLATE = "attempt/_first.jte";

    private final ActStore record;
    private final FormActs forms;
    private final Page page;

    public FirstPages(ActStore record, FormActs forms, Page page) {
        this.record = record;
        this.forms = forms;
        this.page = page;
    }

    public void register(Routes routes) {
        page.sayFirst(TEMPLATE, ctx -> view(ctx, FormErrors.none()));
        routes.get("/first", Role.VIEWER, ctx -> page.fragment(ctx, TEMPLATE, view(ctx, FormErrors.none())));
        routes.post(
                "/hall/stop",
                Role.CAPTAIN,
                ctx -> stop(
                        ctx,
                        "hall.stop",
                        Map.of(
                                "reason",
                                NowPages.field(ctx, "stop-reason"),
                                "words",
                                NowPages.field(ctx, "stop-words"))));
        routes.post(
                "/hall/resume",
                Role.CAPTAIN,
                ctx -> stop(ctx, "hall.resume", Map.of("stop", NowPages.field(ctx, "stop"))));
        routes.post("/attempt/people-safe", Role.HELPER, ctx -> told(ctx, "attempt.people-safe", ""));
        routes.post("/attempt/parted", Role.HELPER, ctx -> told(ctx, "attempt.parted", "place"));
        routes.post("/attempt/broke-too", Role.HELPER, ctx -> told(ctx, "attempt.broke", ""));
        routes.post("/attempt/run-back", Role.HELPER, ctx -> told(ctx, "attempt.run-back", "turns"));
        routes.post("/motor/run-back", Role.HELPER, this::runBack);
    }

    private void stop(Context ctx, String kind, Map<String, String> content) {
        FormErrors form = FormActs.errors(ctx, forms.submit(ctx, kind, content), "");
        page.fragment(ctx, TEMPLATE, view(ctx, form));
    }

    /** Of a motor that no attempt has in hand. */
    private void runBack(Context ctx) {
        Map<String, String> content = Map.of(
                "motor",
                NowPages.field(ctx, "motor"),
                "turns",
                NowPages.field(ctx, "turns"),
                AskedOnce.FIELD,
                NowPages.field(ctx, AskedOnce.FIELD),
                "before",
                NowPages.field(ctx, "before"));
        stop(ctx, "motor.run-back", content);
    }

    private void told(Context ctx, String kind, String field) {
        Map<String, String> content = new HashMap<>(Map.of(
                "attempt", NowPages.field(ctx, "attempt"),
                "motor", NowPages.field(ctx, "motor")));
        if (!field.isEmpty()) {
            content.put(field, NowPages.field(ctx, field));
        }
        if (field.equals("turns")) {
            content.put(AskedOnce.FIELD, NowPages.field(ctx, AskedOnce.FIELD));
        }
        if (field.equals("place")) {
            content.put("seen", NowPages.field(ctx, "where-seen"));
        }
        FormErrors form = FormActs.errors(ctx, forms.submit(ctx, kind, content), "");
        page.fragment(ctx, TEMPLATE, view(ctx, form));
    }

    private static String about(Context ctx) {
        String attempt = NowPages.field(ctx, "attempt");
        return attempt.isEmpty() ? NowPages.field(ctx, "motor") : attempt;
    }

    private FirstView view(Context ctx, FormErrors form) {
        boolean mayTell = Access.callerOf(ctx).role().covers(Role.HELPER);
        boolean mayStop = Access.callerOf(ctx).role().covers(Role.CAPTAIN);
        return record.read(tx -> new FirstView(
                FirstPresenter.items(tx), mayTell, mayStop, form, about(ctx), FirstPresenter.stop(tx, mayStop)));
    }
}
