package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.FullHands;
import org.skeinday.attempt.action.AimActions;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.action.GiveUpAttempt;
import org.skeinday.attempt.action.JudgeWatch;
import org.skeinday.attempt.store.HandsAtMotor;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.units.UnitSystem;

/** Now: the next attempt, and the deeds that move it on. */
public final class NowPages {
    /** A plan slips while nobody does anything. */
    private static final long LOOK_AGAIN_MS = 60_000;

    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final PlanBeside plan;

    public NowPages(ActStore record, FormActs forms, Page page, Clock clock, PlanBeside plan) {
        this.plan = plan;
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
    }

    public void register(Routes routes) {
        routes.post("/units", Role.CAPTAIN, this::units);
        routes.get("/", Role.VIEWER, ctx -> page.show(ctx, "Now", "attempt/now.jte", alike(ctx)));
        routes.get("/now", Role.VIEWER, this::fresh);
        routes.advice("/attempt/plan", Role.VIEWER, this::plan);
        routes.post("/attempt/call", Role.CAPTAIN, ctx -> deed(ctx, "attempt.call", NowForms.call(record, ctx)));
        plain(routes, "/attempt/move", "attempt.move", "attempt", "to", "seen");
        routes.post(
                "/attempt/give-up",
                Role.CAPTAIN,
                ctx -> deed(
                        ctx,
                        "attempt.give-up",
                        new GiveUpAttempt.GiveUp(
                                field(ctx, "attempt"),
                                field(ctx, "reason"),
                                field(ctx, "seen"),
                                field(ctx, "again").equals("yes"))));
        plain(routes, "/attempt/broke", "attempt.broke", "attempt");
        plain(routes, "/attempt/not-broken", "attempt.not-broken", "attempt", "motor");
        plain(
                routes,
                "/attempt/not-broken-after-all",
                "motor.not-broken",
                Map.of("mistake", "reason", "break", "seen"),
                "motor");
        routes.post(
                "/attempt/take-motor",
                Role.CAPTAIN,
                ctx -> deed(
                        ctx,
                        "attempt.take-motor",
                        new AimActions.Take(
                                field(ctx, "attempt"),
                                field(ctx, "motor"),
                                field(ctx, "seenMotor"),
                                field(ctx, "meant"),
                                null,
                                null)));
        plain(routes, "/attempt/gate", "gate.pass", Map.of("passed", "reason"), "attempt", "adult");
        plain(routes, "/attempt/close", "attempt.close", Map.of("why", "reason"), "attempt", "seen");
        routes.post(
                "/watch/judge",
                Role.CAPTAIN,
                ctx -> deed(
                        ctx,
                        "watch.judge",
                        new JudgeWatch.Judge(
                                field(ctx, "attempt"),
                                field(ctx, "slot").matches("[1-3]") ? Integer.parseInt(field(ctx, "slot")) : 0,
                                field(ctx, "verdict"),
                                field(ctx, "judged"),
                                field(ctx, "reading"),
                                field(ctx, "seen"))));
        routes.post(
                "/attempt/type-time",
                Role.CAPTAIN,
                ctx -> deed(ctx, "watch.type", NowForms.typedTime(ctx, field(ctx, "attempt"))));
        routes.post("/attempt/name-hands", Role.CAPTAIN, ctx -> deed(ctx, "attempt.name-hands", NowForms.hands(ctx)));
        plain(routes, "/window/starts", "window.start", "entry");
        routes.post("/window/moved", Role.CAPTAIN, ctx -> deed(ctx, "window.move", NowForms.moved(ctx)));
        plain(routes, "/attempt/more-turns", "attempt.more-turns", "attempt", "seen");
        plain(
                routes,
                "/attempt/some-off",
                "attempt.some-off",
                Map.of("turns-off", "turns"),
                "attempt",
                "seen",
                AskedOnce.FIELD);
        plain(routes, "/attempt/take-back", "attempt.take-back", "attempt", "seen");
        plain(routes, "/attempt/collision", "attempt.collision", Map.of("to", "say"), "attempt");
        routes.post("/attempt/aloft", Role.CAPTAIN, ctx -> deed(ctx, "attempt.aloft", NowForms.aloft(ctx)));
        plain(routes, "/event/use", "event.use", "event");
        plain(
                routes,
                "/attempt/announce",
                "attempt.announce",
                Map.of("announced", "time", "announced-seen", "seen"),
                "attempt",
                AskedOnce.FIELD);
    }

    /** A deed whose content is what the form says. */
    private void plain(Routes routes, String address, String kind, String... fields) {
        plain(routes, address, kind, Map.of(), fields);
    }

    /** The same. @param renamed fields of the form that have another name in the act, by their name in the form */
    private void plain(Routes routes, String address, String kind, Map<String, String> renamed, String... fields) {
        routes.post(address, Role.CAPTAIN, ctx -> {
            Map<String, String> content = new HashMap<>();
            Stream.of(fields).forEach(name -> content.put(name, field(ctx, name)));
            renamed.forEach((name, inAct) -> content.put(inAct, field(ctx, name)));
            deed(ctx, kind, content);
        });
    }

    static String field(Context ctx, String name) {
        String value = ctx.formParam(name);
        return value == null ? "" : value;
    }

    private void deed(Context ctx, String kind, Object content) {
        ForecastWords before = ForecastWords.of(record, field(ctx, "attempt"));
        FormErrors form = FormActs.errors(ctx, forms.submit(ctx, kind, content), "");
        part(ctx, form.doing(before.changed(ForecastWords.of(record, field(ctx, "attempt")))));
    }

    private void fresh(Context ctx) {
        page.shared(ctx, key(ctx), clock, "attempt/_now.jte", () -> alike(ctx));
    }

    /** What a whole page and a fresh part show, made once for a hall that opens it in one moment. */
    private NowView alike(Context ctx) {
        return page.sharedView(ctx, key(ctx), clock, NowView.class, () -> view(ctx, FormErrors.none()));
    }

    /** What a captain may press depends on whose device it is. */
    private static String key(Context ctx) {
        return mayAct(ctx) + " " + (mayAct(ctx) ? person(ctx) : "") + " "
                + ReaderUnits.of(ctx).name() + " " + shown(ctx);
    }

    private void part(Context ctx, FormErrors form) {
        page.fragment(ctx, "attempt/_now.jte", view(ctx, form));
    }

    /** The plan of another motor or model than the one that is offered first. */
    private void plan(Context ctx) {
        String motor = String.valueOf(ctx.queryParam("motor"));
        String model = String.valueOf(ctx.queryParam("model"));
        String entry = String.valueOf(ctx.queryParam("entry"));
        NowView.Plan plan = motor.isEmpty()
                ? NowView.Plan.NONE
                : record.read(tx -> EntryStore.find(tx, entry)
                        .flatMap(found -> MotorStore.find(tx, motor)
                                .map(one -> PlanLines.of(
                                        tx,
                                        found,
                                        null,
                                        one,
                                        ModelStore.find(tx, model).orElse(null),
                                        ReaderUnits.of(ctx))))
                        .orElseThrow(
                                () -> new Refusal(404, "There is no such entry or motor; choose one of the list.")));
        page.fragment(ctx, "attempt/_plan.jte", plan);
    }

    private NowView view(Context ctx, FormErrors form) {
        long nowMs = clock.millis();
        return record.read(tx -> Today.read(tx, nowMs)
                .map(today -> view(ctx, form, tx, today, nowMs))
                .orElse(new NowView(
                        "No event yet",
                        "",
                        form,
                        null,
                        List.of(),
                        null,
                        Today.NO_EVENT,
                        List.of(),
                        mayAct(ctx),
                        FullHands.FREE,
                        other(ReaderUnits.of(ctx)),
                        List.of(),
                        PlanBeside.Said.NOTHING,
                        0,
                        List.of(),
                        null,
                        0)));
    }

    private NowView view(Context ctx, FormErrors form, Tx tx, Today today, long nowMs) {
        PlanBeside.Said said = Apart.made(
                "The plan of the day",
                () -> plan.at(tx, nowMs),
                sentence -> new PlanBeside.Said(false, List.of(), sentence));
        UnitSystem units = ReaderUnits.of(ctx);
        FullHands hands = mayAct(ctx) ? HandsAtMotor.ofAll(tx, today.open(), person(ctx)) : FullHands.FREE;
        EventsAtHand events = EventsAtHand.beside(tx, today.event());
        var presenter = new NowPresenter(tx, today, units, record.people()::name, clock.getZone(), mayAct(ctx));
        @Nullable NowCard card = presenter.card(nowMs, shown(ctx));
        return new NowView(
                today.event().name(),
                PageWords.rules(today.event())
                        + PageWords.devices(TermsStore.of(tx, today.event().id()))
                        + PageWords.flightRules(today),
                form,
                card,
                card == null ? List.of() : presenter.others(card.live().id(), nowMs),
                today.justClosed().map(a -> EntryLines.closed(today, a)).orElse(null),
                today.whyNone(),
                EntryLines.of(today, clock.getZone()),
                mayAct(ctx) && hands.hasKeys(),
                hands,
                other(units),
                Announced.open(tx, today, nowMs),
                said,
                said.isThere() ? (nowMs / LOOK_AGAIN_MS + 1) * LOOK_AGAIN_MS : 0,
                events.choices(),
                events.of(LocalDate.now(clock).toString()),
                today.event().timekeepers());
    }

    /** Chosen once for the team; every page that is open shows it from then on. */
    private void units(Context ctx) {
        String words = FormActs.words(ctx, forms.submit(ctx, "units.choose", Map.of("units", field(ctx, "units"))));
        if (!words.isEmpty()) {
            throw new Refusal(422, words);
        }
        ctx.header("HX-Refresh", "true");
        ctx.status(204);
    }

    private static boolean mayAct(Context ctx) {
        return Access.callerOf(ctx).role().covers(Role.CAPTAIN);
    }

    private static String person(Context ctx) {
        return Access.callerOf(ctx).person();
    }

    private static String other(UnitSystem units) {
        return (units.isMetric() ? UnitSystem.INCH : UnitSystem.METRIC).word();
    }

    /**
     * The attempt that was chosen from the list, or that the form was about; it stays in sight while it is open. A form
     * about another one says which is in sight.
     */
    private static String shown(Context ctx) {
        String asked = ctx.queryParam("attempt");
        String beside = field(ctx, "shown");
        return asked != null ? asked : beside.isEmpty() ? field(ctx, "attempt") : beside;
    }
}
