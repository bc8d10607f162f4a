package org.skeinday.steps.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.steps.Moment;
import org.skeinday.steps.Run;
import org.skeinday.steps.store.ListStore;

/** The page Checks: the list of this pause first, the others beneath; and all of them on paper. */
public final class ChecksPages {
    /** So long a caution's text stays in full once somebody has it in front of them. */
    public static final long READING_MS = 120_000;

    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final AtHand atHand;

    public ChecksPages(ActStore record, FormActs forms, Page page, Clock clock, AtHand atHand) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
        this.atHand = atHand;
    }

    public void register(Routes routes) {
        routes.get(
                "/checks",
                Role.HELPER,
                ctx -> page.show(ctx, "Checks", "steps/checks.jte", view(ctx, FormErrors.none())));
        routes.get(
                "/checks/part",
                Role.HELPER,
                ctx -> page.fragment(ctx, "steps/_checks.jte", view(ctx, FormErrors.none())));
        routes.get("/checks/print", Role.HELPER, ctx -> page.show(ctx, "Lists on paper", "steps/print.jte", printed()));
        routes.post(
                "/checks/correct",
                Role.HELPER,
                ctx -> told(
                        ctx, "step.correct", List.of("about", "step", "done", "answer", "reason", "unit", "insist")));
        routes.post("/checks/gate", Role.HELPER, this::pass);
    }

    private void pass(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, String> content = Map.of(
                "attempt", typed.typed("attempt"), "adult", typed.typed("adult"), "reason", typed.typed("passed"));
        part(ctx, FormActs.errors(ctx, forms.submit(ctx, "gate.pass", content), "gate"));
    }

    private void told(Context ctx, String kind, List<String> fields) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, String> content = new HashMap<>();
        fields.forEach(field -> content.put(field, typed.typed(field)));
        part(ctx, FormActs.errors(ctx, forms.submit(ctx, kind, content), "reason"));
    }

    private void part(Context ctx, FormErrors form) {
        page.fragment(ctx, "steps/_checks.jte", view(ctx, form));
    }

    private PrintView printed() {
        return record.read(tx -> new PrintView(ListStore.all(tx)));
    }

    private ChecksView view(Context ctx, FormErrors form) {
        return record.read(tx ->
                EventStore.next(tx).map(event -> view(ctx, tx, event, form)).orElseGet(() -> noDay(ctx, form)));
    }

    private static ChecksView noDay(Context ctx, FormErrors form) {
        return new ChecksView(
                "",
                "There is no day yet whose lists could be ticked. They can be printed.",
                null,
                List.of(),
                null,
                List.of(),
                List.of(),
                "",
                "/checks/part",
                GateView.OPEN,
                "",
                "",
                StripView.NONE,
                isCoach(ctx),
                form);
    }

    private static boolean isCoach(Context ctx) {
        return Access.callerOf(ctx).role().covers(Role.COACH);
    }

    private ChecksView view(Context ctx, Tx tx, EventAdded event, FormErrors form) {
        String today = LocalDate.now(clock).toString();
        long nowMs = clock.millis();
        var pause = new Pause(tx, event, atHand, today, word(ctx, "subject"));
        List<Pause.Place> all = pause.all();
        Optional<Pause.Place> asked =
                pause.isQuiet() ? Optional.empty() : pause.asked(all, word(ctx, "list"), word(ctx, "subject"));
        Optional<Pause.Place> shown = asked.or(() -> pause.now(all, nowMs));
        Caller caller = Access.callerOf(ctx);
        @Nullable String person = caller.person().isEmpty() ? null : caller.person();
        Optional<AtHand.Attempt> called = pause.called();
        Optional<AtHand.Attempt> underWay = pause.attempt().filter(a -> a.stage() != AtHand.Stage.CLOSED);
        GateView waits = called.map(a -> GateView.of(pause.verdict(a))).orElse(GateView.OPEN);
        var notices = new NoticesPresenter(
                all, pause.ofItsPlace(all), called.map(AtHand.Attempt::id).orElse(""), !waits.isOpen());
        return new ChecksView(
                event.name(),
                shown.isPresent() ? "" : pause.none(true),
                all.stream()
                        .filter(p -> shown.filter(p::equals).isEmpty())
                        .flatMap(p -> ended(p, notices.ending(p), nowMs).stream())
                        .findFirst()
                        .orElse(null),
                notices.above(shown),
                shown.map(place -> new WalkPresenter(
                                        place,
                                        person,
                                        caller.device(),
                                        record.people()::name,
                                        clock.getZone(),
                                        nowMs,
                                        PlaceWords.of(tx, atHand, ReaderUnits.of(ctx), place.list(), place.subject()),
                                        atHand.units(tx, place.subject(), ReaderUnits.of(ctx)))
                                .walk()
                                .ending(notices.ending(place)))
                        .orElse(null),
                all.stream()
                        .filter(p -> shown.filter(s -> s.equals(p)).isEmpty())
                        .map(ChecksPages::other)
                        .toList(),
                shown.map(p -> new CautionsFor(tx, ctx, clock).at(p.moment())).orElse(List.of()),
                today,
                "/checks/part" + asked.map(ChecksPages::query).orElse(""),
                waits,
                called.map(AtHand.Attempt::id).orElse(""),
                underWay.map(AtHand.Attempt::title).orElse(""),
                underWay.map(AtHand.Attempt::strip).orElse(StripView.NONE),
                isCoach(ctx),
                form);
    }

    private static String word(Context ctx, String name) {
        String value = ctx.queryParam(name);
        String sent = value == null ? ctx.formParam(name) : value;
        return sent == null ? "" : sent;
    }

    private static String query(Pause.Place place) {
        return "?list=" + place.list().id() + "&subject=" + place.subject();
    }

    /** Said for as long as somebody may still stand before it. */
    private static Optional<ChecksView.Ended> ended(Pause.Place place, String next, long nowMs) {
        return Optional.of(next)
                .filter(words -> !words.isEmpty() && place.wasTicked(nowMs - READING_MS))
                .map(words -> new ChecksView.Ended(
                        place.moment() == Moment.BEFORE_WINDING
                                ? place.list().title() + " is done."
                                : title(place) + " is done. " + words,
                        address(place)));
    }

    /** Of a list that there are several of with what it is for. */
    static String title(Pause.Place place) {
        return place.list().title() + (place.about().isEmpty() ? "" : ": " + place.about());
    }

    static String address(Pause.Place place) {
        return "/checks" + query(place);
    }

    private static ChecksView.Other other(Pause.Place place) {
        Run run = place.run();
        int of = run.list().steps().size();
        int open = run.open().size();
        String state = open == 0 ? "done" : open == of ? "open" : of - open + " of " + of;
        return new ChecksView.Other(address(place), title(place), state, open == 0 ? "done" : open == of ? "" : "now");
    }
}
