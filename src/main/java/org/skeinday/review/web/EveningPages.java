package org.skeinday.review.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.skeinday.attempt.web.ForecastWords;
import org.skeinday.bench.web.AlonePages;
import org.skeinday.bench.web.BenchPages;
import org.skeinday.contest.store.EventStore;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;
import org.skeinday.review.FlightRow;
import org.skeinday.review.Named;
import org.skeinday.review.SideBySide;
import org.skeinday.review.action.EveningActions;
import org.skeinday.review.store.FlightRowStore;
import org.skeinday.units.UnitSystem;

/** The evening: what happened, what it means, what to change. All of it advises, so none of it is served while it is quiet. */
public final class EveningPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;

    public EveningPages(ActStore record, FormActs forms, Page page, Clock clock) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
    }

    public void register(Routes routes) {
        new OneFlightPages(record, forms, page, clock).register(routes);
        routes.advice(
                "/evening",
                Role.CAPTAIN,
                ctx -> page.show(
                        ctx, "Evening", "review/evening.jte", evening(ctx).apply(EveningPresenter::view)));
        routes.advice(
                "/evening/pictures",
                Role.CAPTAIN,
                ctx -> page.show(
                        ctx, "Pictures", "review/pictures.jte", evening(ctx).apply(EveningPresenter::pictures)));
        routes.advice("/evening/compare", Role.CAPTAIN, this::compare);
        routes.post("/evening/word", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            word(ctx);
        });
        routes.post("/evening/wind", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            String wind = FormErrors.of(ctx).typed("wind");
            answered(
                    ctx,
                    () -> ForecastWords.ofWind(record, wind, ReaderUnits.of(ctx)),
                    () -> AlonePages.windWord(ctx, forms));
        });
        routes.post("/evening/break", Role.COACH, ctx -> {
            routes.refuseAdvice();
            String motor = FormErrors.of(ctx).typed("motor");
            answered(
                    ctx,
                    () -> ForecastWords.ofMotor(record, motor, ReaderUnits.of(ctx)),
                    () -> BenchPages.breakWord(ctx, forms, motor));
        });
        routes.post("/evening/not-broken", Role.COACH, ctx -> {
            routes.refuseAdvice();
            String motor = FormErrors.of(ctx).typed("motor");
            answered(
                    ctx,
                    () -> ForecastWords.ofMotor(record, motor, ReaderUnits.of(ctx)),
                    () -> BenchPages.notBroken(ctx, forms, motor));
        });
        routes.post("/evening/change", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            change(ctx);
        });
    }

    /** Reads in one snapshot. */
    private interface Reading {
        <T> T apply(java.util.function.Function<EveningPresenter, T> of);
    }

    private Reading evening(Context ctx) {
        EveningQuery query = EveningQuery.of(ctx);
        UnitSystem units = ReaderUnits.of(ctx);
        boolean coach = Access.callerOf(ctx).role().covers(Role.COACH);
        return new Reading() {
            @Override
            public <T> T apply(java.util.function.Function<EveningPresenter, T> of) {
                return record.read(tx -> of.apply(
                        new EveningPresenter(tx, clock.getZone(), people(), units, query, clock.millis(), coach)));
            }
        };
    }

    private Map<String, String> people() {
        return record.people().names();
    }

    private List<FlightRow> rows() {
        return record.read(tx -> FlightRowStore.all(tx, clock.getZone(), people()));
    }

    private void compare(Context ctx) {
        List<String> ids = ctx.queryParams("flight").stream().distinct().toList();
        List<FlightRow> chosen =
                rows().stream().filter(r -> ids.contains(r.id())).toList();
        if (chosen.size() < SideBySide.FEWEST || chosen.size() > SideBySide.MOST || chosen.size() != ids.size()) {
            ctx.status(422);
            String problem = "Tick two to four flights to see them side by side; " + ids.size() + " were ticked.";
            page.show(ctx, "Side by side", "review/compare.jte", new CompareView(problem, List.of(), List.of()));
            return;
        }
        SideBySide side = SideBySide.of(chosen, ReaderUnits.of(ctx));
        var view = new CompareView(
                "",
                side.flights().stream()
                        .map(r -> new EveningView.Link(FlightTable.label(r, clock.getZone()), FlightTable.address(r)))
                        .toList(),
                side.lines().stream()
                        .map(l -> new CompareView.Line(
                                l.figure().words(),
                                l.texts().stream().map(t -> t.orElse("")).toList(),
                                l.differs()))
                        .toList());
        page.show(ctx, "Side by side", "review/compare.jte", view);
    }

    /** One word about a flight that waits for it, said beside the others. */
    private void word(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        String id = typed.typed("flight");
        ForecastWords before = ForecastWords.of(record, id);
        Answer answer = ctx.formParam("number") == null
                ? forms.submit(ctx, "flight.counts", OneFlightPages.decided(typed, id, typed.typed("verdict")))
                : forms.submit(ctx, "flight.confirm", OneFlightPages.confirmed(ctx, id));
        String problem = FormActs.words(ctx, answer);
        String said = problem.isEmpty() ? ("Saved. " + before.changed(ForecastWords.of(record, id))).strip() : "";
        page.fragment(
                ctx,
                "review/_evening.jte",
                evening(ctx).apply(EveningPresenter::view).said(said, problem));
    }

    /** One word about a wind or a break that waits for it. */
    private void answered(Context ctx, Supplier<ForecastWords> figures, Supplier<Answer> word) {
        ForecastWords before = figures.get();
        String problem = FormActs.words(ctx, word.get());
        String said = problem.isEmpty() ? ("Saved. " + before.changed(figures.get())).strip() : "";
        page.fragment(
                ctx,
                "review/_evening.jte",
                evening(ctx).apply(EveningPresenter::view).said(said, problem));
    }

    private void change(Context ctx) {
        String event = FormErrors.of(ctx).typed("event");
        List<String> lines = ctx.formParams("line");
        var change = new EveningActions.Change(event, lines, ctx.formParams("seen"));
        String words = FormActs.words(ctx, forms.submit(ctx, "evening.change-next-time", change));
        Optional<Named> named = record.read(tx -> EventStore.find(tx, event).map(e -> new Named(e.id(), e.name())));
        Named of = named.orElseThrow(() -> Refusal.notFound("There is no such event any more; look again."));
        ChangeView there = record.read(tx -> ChangePresenter.view(tx, of));
        page.fragment(
                ctx,
                "review/_change.jte",
                new ChangeView(
                        of.id(),
                        words.isEmpty() ? there.lines() : ChangePresenter.three(lines),
                        there.seen(),
                        words,
                        words.isEmpty()));
    }
}
