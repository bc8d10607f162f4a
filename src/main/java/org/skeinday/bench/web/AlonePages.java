package org.skeinday.bench.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.attempt.web.ForecastWords;
import org.skeinday.attempt.web.MotorDemand;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.StopRule;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;
import org.skeinday.steps.web.CautionsFor;

/** Winds without an attempt, and the break test of a batch. */
public final class AlonePages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final Pace pace;

    public AlonePages(ActStore record, FormActs forms, Page page, Clock clock, Pace pace) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
        this.pace = pace;
    }

    public void register(Routes routes) {
        routes.get(
                "/winding/motor/{motor}",
                Role.HELPER,
                ctx -> page.show(ctx, "Winding", "bench/alone.jte", alone(ctx, FormErrors.none())));
        routes.get(
                "/winding/motor/{motor}/part",
                Role.HELPER,
                ctx -> page.fragment(ctx, "bench/_alone.jte", alone(ctx, FormErrors.none())));
        routes.post("/winding/motor/{motor}/count", Role.HELPER, this::count);
        routes.post("/winding/motor/{motor}/reading", Role.HELPER, this::reading);
        routes.post("/winding/motor/{motor}/judge", Role.HELPER, this::judge);
        routes.get(
                "/bench/break-test/{batch}",
                Role.HELPER,
                ctx -> page.show(ctx, "Break test", "bench/breaktest.jte", breakTest(ctx)));
        routes.get(
                "/bench/break-test/{batch}/part",
                Role.HELPER,
                ctx -> page.fragment(ctx, "bench/_breaktest.jte", breakTest(ctx)));
    }

    private void count(Context ctx) {
        ForecastWords before = figures(ctx);
        FormErrors form = WindingPages.counted(ctx, forms);
        page.fragment(ctx, "bench/_alone.jte", alone(ctx, form.doing(before.changed(figures(ctx)))));
    }

    private void reading(Context ctx) {
        ForecastWords before = figures(ctx);
        FormErrors form = WindingPages.readingWord(ctx, forms);
        page.fragment(ctx, "bench/_alone.jte", alone(ctx, form.doing(before.changed(figures(ctx)))));
    }

    private void judge(Context ctx) {
        ForecastWords before = figures(ctx);
        FormErrors word = FormActs.errors(ctx, windWord(ctx, forms), "judge");
        FormErrors form = word.doing(before.changed(figures(ctx)));
        String reason = form.message("reason");
        page.fragment(ctx, "bench/_alone.jte", alone(ctx, reason.isEmpty() ? form : form.with("judge", reason)));
    }

    /** What the record makes of the motor's batch. */
    private ForecastWords figures(Context ctx) {
        return ForecastWords.ofMotor(record, ctx.pathParam("motor"), ReaderUnits.of(ctx));
    }

    /** What the form of a wind that waits for a word says of it. */
    public static Answer windWord(Context ctx, FormActs forms) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, String> content = new HashMap<>();
        for (String field : List.of("wind", "verdict", "reason", "seen")) {
            if (typed.typed().containsKey(field)) {
                content.put(field, typed.typed(field));
            }
        }
        return forms.submit(ctx, "wind.judge", content);
    }

    private AloneView alone(Context ctx, FormErrors form) {
        return record.read(tx -> MotorLifeStore.find(tx, ctx.pathParam("motor"))
                .map(life -> alone(ctx, tx, life, form))
                .orElseThrow(() -> Refusal.notFound("There is no such motor. Was it removed in Prepare?")));
    }

    private AloneView alone(Context ctx, Tx tx, MotorLife life, FormErrors form) {
        var units = ReaderUnits.of(ctx);
        var viewer = new WindAlonePresenter.Viewer(Access.callerOf(ctx).device(), WindAlonePresenter.quiet(tx));
        BenchView.Row row = new MotorRows(
                        units, clock.getZone(), clock.millis(), pace.undo().toMillis())
                .row(
                        life,
                        Map.of(),
                        MotorLifeStore.byHand(tx),
                        MotorUseStore.all(tx).of(life.motor().id()));
        var cautions = new CautionsFor(tx, ctx, clock);
        AloneView view = new WindAlonePresenter(tx, life, units, clock.millis())
                .view(
                        viewer,
                        new WindAlonePresenter.Asked(stopRule(ctx), asked(ctx, "past"), asked(ctx, "place")),
                        row,
                        clock.getZone(),
                        form,
                        record.people()::name);
        return view.cautioned(view.isBreaking() ? cautions.ofBreaking() : cautions.withoutChecks(), cautions.today());
    }

    /** A break test is asked for by its word, and by nothing else. */
    private static StopRule stopRule(Context ctx) {
        return asked(ctx, "stop").equals(StopRule.BREAKING.word()) ? StopRule.BREAKING : StopRule.COUNT;
    }

    private static String asked(Context ctx, String name) {
        String value = ctx.queryParam(name);
        return value == null || !value.matches("[a-z0-9-]{1,80}") ? "" : value;
    }

    private BreakTestView breakTest(Context ctx) {
        boolean captain = Access.callerOf(ctx).role().covers(Role.CAPTAIN);
        return record.read(tx -> {
            List<String> needed = List.copyOf(MotorDemand.of(tx, clock.millis()).keySet());
            var cautions = new CautionsFor(tx, ctx, clock);
            return BreakTestPresenter.view(tx, ctx.pathParam("batch"), ReaderUnits.of(ctx), needed, captain)
                    .map(view -> view.cautioned(cautions.ofBreaking(), cautions.today()))
                    .orElseThrow(() -> Refusal.notFound("There is no such batch. Was it removed in Prepare?"));
        });
    }
}
