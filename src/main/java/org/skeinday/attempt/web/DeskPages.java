package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.attempt.action.SignList;
import org.skeinday.device.web.PinGate;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** The chief's desk: what waits for a decision, and several times signed at once. */
public final class DeskPages {
    /** An attempt and its time, as the box of a form has them. */
    private static final Pattern SHOWN = Pattern.compile("(\\S{1,80}) (\\d{1,9})");

    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final PinGate pins;

    public DeskPages(ActStore record, FormActs forms, Page page, Clock clock, PinGate pins) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
        this.pins = pins;
    }

    public void register(Routes routes) {
        routes.get(
                "/desk",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "Chief's desk", "attempt/desk.jte", view(FormErrors.none())));
        routes.get("/desk/part", Role.CAPTAIN, ctx -> part(ctx, FormErrors.none()));
        routes.post("/desk/sign", Role.CAPTAIN, this::sign);
    }

    private void sign(Context ctx) {
        String problem = GivenPin.problem(ctx, pins);
        if (!problem.isEmpty()) {
            ctx.status(422);
            part(ctx, FormErrors.of(ctx).with("pin", problem));
            return;
        }
        var times = ctx.formParams("times").stream()
                .map(SHOWN::matcher)
                .filter(Matcher::matches)
                .map(m -> new SignList.Shown(m.group(1), Long.parseLong(m.group(2))))
                .toList();
        part(
                ctx,
                FormActs.errors(
                        ctx,
                        forms.submit(ctx, "attempt.sign-list", new SignList.Times(times, GivenPin.isThere(ctx))),
                        ""));
    }

    private void part(Context ctx, FormErrors form) {
        page.fragment(ctx, "attempt/_desk.jte", view(form));
    }

    private DeskView view(FormErrors form) {
        return record.read(tx -> Today.read(tx, clock.millis())
                .map(today -> new DeskPresenter(tx, today, clock.getZone()).view(form))
                .orElseGet(() -> DeskPresenter.nothing(form)));
    }
}
