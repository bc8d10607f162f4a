package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.time.Clock;
import org.skeinday.attempt.action.CorrectMotor;
import org.skeinday.attempt.action.ResultActions;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.device.web.PinGate;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** The record of one attempt: how its time came about, who signs, what is protested, what was opened again. */
public final class RecordPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final PinGate pins;

    public RecordPages(ActStore record, FormActs forms, Page page, Clock clock, PinGate pins) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
        this.pins = pins;
    }

    public void register(Routes routes) {
        routes.get(
                "/attempt/{id}",
                Role.VIEWER,
                ctx -> page.show(ctx, "Attempt record", "attempt/record.jte", view(ctx, FormErrors.none())));
        routes.get("/attempt/{id}/part", Role.VIEWER, ctx -> part(ctx, FormErrors.none()));
        routes.post("/attempt/{id}/sign", Role.TIMEKEEPER, this::sign);
        routes.post(
                "/attempt/{id}/protest",
                Role.TIMEKEEPER,
                ctx -> deed(
                        ctx,
                        "attempt.protest",
                        new ResultActions.Protests(ctx.pathParam("id"), NowPages.field(ctx, "words"))));
        routes.post(
                "/attempt/{id}/settle",
                Role.CAPTAIN,
                ctx -> deed(
                        ctx,
                        "attempt.settle",
                        new ResultActions.Settle(NowPages.field(ctx, "protest"), NowPages.field(ctx, "how"))));
        routes.post(
                "/attempt/{id}/type-time",
                Role.TIMEKEEPER,
                ctx -> deed(ctx, "watch.type", NowForms.typedTime(ctx, ctx.pathParam("id"))));
        routes.post(
                "/attempt/{id}/motor",
                Role.CAPTAIN,
                ctx -> deed(
                        ctx,
                        "attempt.motor-was",
                        new CorrectMotor.Flown(
                                ctx.pathParam("id"),
                                NowPages.field(ctx, CorrectMotor.MOTOR),
                                NowPages.field(ctx, "seen"),
                                NowPages.field(ctx, CorrectMotor.WHY))));
        routes.post("/attempt/{id}/reopen", Role.CAPTAIN, this::reopen);
    }

    private void sign(Context ctx) {
        String seen = NowPages.field(ctx, "seen");
        if (givesWrongPin(ctx)) {
            return;
        }
        deed(
                ctx,
                "attempt.sign",
                new ResultActions.Sign(
                        ctx.pathParam("id"),
                        NowPages.field(ctx, "as"),
                        seen.matches("\\d{1,9}") ? Long.parseLong(seen) : -1,
                        GivenPin.isThere(ctx)));
    }

    private void reopen(Context ctx) {
        if (givesWrongPin(ctx)) {
            return;
        }
        deed(
                ctx,
                "attempt.reopen",
                new ResultActions.Reopen(ctx.pathParam("id"), NowPages.field(ctx, "reason"), GivenPin.isThere(ctx)));
    }

    /** Answers the form with the reason when a PIN was given and is wrong. The PIN itself goes nowhere else. */
    private boolean givesWrongPin(Context ctx) {
        String problem = GivenPin.problem(ctx, pins);
        if (!problem.isEmpty()) {
            ctx.status(422);
            part(ctx, FormErrors.of(ctx).with("pin", problem));
        }
        return !problem.isEmpty();
    }

    private void deed(Context ctx, String kind, Object content) {
        part(ctx, FormActs.errors(ctx, forms.submit(ctx, kind, content), ""));
    }

    private void part(Context ctx, FormErrors form) {
        page.fragment(ctx, "attempt/_record.jte", view(ctx, form));
    }

    private RecordView view(Context ctx, FormErrors form) {
        return record.read(tx -> AttemptStore.find(tx, ctx.pathParam("id"))
                .map(attempt -> new AttemptRecordPresenter(
                                tx, attempt, record.people()::name, clock.getZone(), clock.millis())
                        .view(Access.callerOf(ctx), form))
                .orElseThrow(() -> Refusal.notFound("There is no such attempt.")));
    }
}
