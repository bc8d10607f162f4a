package org.skeinday.review.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.AfterFlight;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.action.FlightWorth;
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
        routes.advice(
                "/evening/flight/{id}",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "Flight", "review/flight.jte", flight(ctx, FormErrors.none(), "", null)));
        routes.post("/evening/flight/{id}", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            judge(ctx);
        });
        routes.post("/evening/flight/{id}/so", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            confirm(ctx);
        });
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

    /** @param said what the last word did; empty when none was just taken */
    private OneFlightView flight(Context ctx, FormErrors form, String problem, @Nullable String said) {
        String id = ctx.pathParam("id");
        FlightRow row = rows().stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Refusal.notFound("There is no such flight in the record."));
        return new OneFlightPresenter(row, clock.getZone(), ReaderUnits.of(ctx))
                .view(form, problem, said != null, said == null ? "" : said);
    }

    /** What is forecast from a flight, to be held against what it is after a correction. */
    private ForecastWords forecast(String flight) {
        return ForecastWords.of(record, flight);
    }

    /** Whether a flight counts, both ways; what was counted of an official one goes with it. */
    private void judge(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        String id = ctx.pathParam("id");
        if (typed.typed("verdict").equals("turns")) {
            turns(ctx, typed, id);
            return;
        }
        boolean valid = typed.typed("verdict").equals("valid");
        if (!valid && typed.typed("spoilt").isBlank()) {
            ctx.status(422);
            form(ctx, typed.with("spoilt", "Say why it says nothing of model and motor"), "");
            return;
        }
        ForecastWords before = forecast(id);
        Answer answer = ctx.formParam("remaining") == null
                ? forms.submit(
                        ctx, "flight.counts", decided(typed, id, valid ? FlightWorth.COUNTS : FlightWorth.LEFT_OUT))
                : forms.submit(ctx, "flight.told", told(typed, id, valid));
        answered(ctx, typed, answer, before);
    }

    /** The turns left, and nothing of whether it counts: a word about that which was typed beside them waits for its key. */
    private void turns(Context ctx, FormErrors typed, String id) {
        OneFlightView shown = flight(ctx, FormErrors.none(), "", null);
        if (!typed.typed("spoilt").strip().equals(shown.spoilt())
                || !typed.typed("contact").strip().equals(shown.contact())) {
            ctx.status(422);
            form(ctx, typed.with("spoilt", "Say by one of the two keys whether it counts or is left out"), "");
            return;
        }
        ForecastWords before = forecast(id);
        var told = new AfterFlight.Landed(
                id,
                typed.typed("remaining"),
                shown.seen().equals(FlightWorth.UNDECIDED) ? "" : shown.seen(),
                "",
                typed.typed().get("seen"),
                "later",
                typed.typed(AskedOnce.FIELD));
        answered(ctx, typed, forms.submit(ctx, "flight.told", told), before);
    }

    private static AfterFlight.Landed told(FormErrors typed, String id, boolean valid) {
        return new AfterFlight.Landed(
                id,
                typed.typed("remaining"),
                valid ? "" : typed.typed("spoilt"),
                valid ? "" : typed.typed("contact"),
                typed.typed().get("seen"),
                "yes",
                typed.typed(AskedOnce.FIELD));
    }

    private static FlightWorth.Decided decided(FormErrors typed, String id, String verdict) {
        String reason = typed.typedOr("reason", typed.typed("spoilt"));
        return new FlightWorth.Decided(
                id, verdict, reason, typed.typed("contact"), typed.typed().get("seen"));
    }

    private void confirm(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        String id = ctx.pathParam("id");
        ForecastWords before = forecast(id);
        answered(ctx, typed, forms.submit(ctx, "flight.confirm", confirmed(ctx, id)), before);
    }

    private static FlightWorth.Confirmed confirmed(Context ctx, String flight) {
        try {
            return new FlightWorth.Confirmed(flight, FlightWorth.numbers(ctx.formParams("number")));
        } catch (IllegalArgumentException e) {
            throw Refusal.malformed("That is no number of a flight. Load the page again and repeat it.");
        }
    }

    private void answered(Context ctx, FormErrors typed, Answer answer, ForecastWords before) {
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty()) {
            String changed = before.changed(forecast(ctx.pathParam("id")));
            page.fragment(ctx, "review/_flight.jte", flight(ctx, FormErrors.none(), "", changed));
            return;
        }
        Map<String, String> wrong = answer instanceof Answer.Refused refused ? refused.fields() : Map.of();
        form(ctx, typed.withAll(wrong), wrong.isEmpty() ? words : "");
    }

    private void form(Context ctx, FormErrors typed, String problem) {
        page.fragment(ctx, "review/_flight.jte", flight(ctx, typed, problem, null));
    }

    /** One word about a flight that waits for it, said beside the others. */
    private void word(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        String id = typed.typed("flight");
        ForecastWords before = forecast(id);
        Answer answer = ctx.formParam("number") == null
                ? forms.submit(ctx, "flight.counts", decided(typed, id, typed.typed("verdict")))
                : forms.submit(ctx, "flight.confirm", confirmed(ctx, id));
        String problem = FormActs.words(ctx, answer);
        String said = problem.isEmpty() ? ("Saved. " + before.changed(forecast(id))).strip() : "";
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
