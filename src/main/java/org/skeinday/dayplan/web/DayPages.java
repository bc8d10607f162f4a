package org.skeinday.dayplan.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.web.NextMotors;
import org.skeinday.attempt.web.OpenAttempt;
import org.skeinday.dayplan.Scenario;
import org.skeinday.dayplan.SolverMissing;
import org.skeinday.dayplan.action.SetbackActions;
import org.skeinday.dayplan.action.TakePlan;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** Day: the plan in force, what has slipped, a proposal to take or leave, a change to try. */
public final class DayPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final Supplier<String> newId;
    private final Runnable loadSolver;
    private final KeptProposals proposals = new KeptProposals();

    public DayPages(
            ActStore record, FormActs forms, Page page, Clock clock, Supplier<String> newId, Runnable loadSolver) {
        this.loadSolver = loadSolver;
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
        this.newId = newId;
    }

    public void register(Routes routes) {
        routes.get("/day", Role.VIEWER, ctx -> page.show(ctx, "Day", "dayplan/day.jte", page(ctx)));
        routes.get("/day/part", Role.VIEWER, ctx -> page.fragment(ctx, "dayplan/_day.jte", view(ctx)));
        routes.post("/day/propose", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            propose(ctx);
        });
        routes.get("/day/proposal", Role.CAPTAIN, ctx -> answer(ctx, "", null));
        routes.post("/day/take", Role.CAPTAIN, this::take);
        routes.post("/day/tell", Role.CAPTAIN, this::tell);
        routes.post(
                "/day/over",
                Role.CAPTAIN,
                ctx -> told(ctx, "day.end-setback", new SetbackActions.End(field(ctx, "event"), field(ctx, "id"))));
    }

    /** Opened with something slipped, it comes with a proposal at once: unless nobody may be helped. */
    private DayView.Opened page(Context ctx) {
        DayView view = view(ctx);
        boolean asks = view.mayAct() && !view.slipped().isEmpty() && !isQuiet();
        return new DayView.Opened(view, asks);
    }

    private boolean isQuiet() {
        return record.read(AttemptStore::quietNow).isPresent();
    }

    private void tell(Context ctx) {
        DayChoices.Tellable what = tellable(field(ctx, "what"));
        told(
                ctx,
                "day.tell-setback",
                new SetbackActions.Tell(
                        field(ctx, "event"),
                        what.kind(),
                        what.who(),
                        field(ctx, "minutes"),
                        field(ctx, "cure"),
                        field(ctx, "before")));
    }

    /** One that the form does not offer (any more) names nobody, and the deed says so. */
    private DayChoices.Tellable tellable(String key) {
        return choices().stream()
                .flatMap(choices -> choices.toTell().stream())
                .filter(t -> t.key().equals(key))
                .findFirst()
                .orElse(new DayChoices.Tellable("", "", ""));
    }

    private Optional<DayChoices> choices() {
        long nowMs = clock.millis();
        return record.read(tx -> DayNow.read(tx, nowMs))
                .map(day -> of(day, nowMs).choices());
    }

    private static String field(Context ctx, String name) {
        String value = ctx.formParam(name);
        return value == null ? "" : value.strip();
    }

    /** What was told makes the plan slip, or leaves it: the page says so, and with it comes what can be done. */
    private void told(Context ctx, String kind, Object content) {
        String problem = FormActs.words(ctx, forms.submit(ctx, kind, content));
        page.fragment(
                ctx,
                "dayplan/_proposal.jte",
                new ProposalView(problem, null, problem.isEmpty() && page(ctx).asks()));
    }

    private DayView view(Context ctx) {
        long nowMs = clock.millis();
        boolean mayAct = Access.callerOf(ctx).role().covers(Role.CAPTAIN);
        String person = Access.callerOf(ctx).person();
        return record.read(tx -> Apart.made(
                        "The plan of the day",
                        () -> DayNow.read(tx, nowMs)
                                .map(day -> of(day, nowMs).view(person, handIn(tx, day, nowMs), mayAct)),
                        words -> Optional.of(DayView.none("Day", words)))
                .map(view -> AttemptStore.quietNow(tx).isPresent() ? view.quiet() : view)
                .map(view -> view.with(new DayView.Attempts(
                        Apart.made(
                                "Where the attempts stand",
                                () -> OpenAttempt.read(tx, clock.millis()),
                                words -> List.of()),
                        Apart.made("Who flies with which motor", () -> NextMotors.read(tx), words -> List.of()))))
                .orElseGet(() -> DayView.none(
                        "No event yet", "On the page Prepare a coach sets a day up in about ten minutes.")));
    }

    private DayView.HandIn handIn(Tx tx, DayNow day, long nowMs) {
        return Apart.made(
                "What is ready to be handed in",
                () -> new HandIn(tx, day.event(), clock.getZone(), nowMs).view(),
                words -> new DayView.HandIn("Handing in", List.of(words)));
    }

    private DayPresenter of(DayNow day, long nowMs) {
        return new DayPresenter(day, record.people()::name, clock.getZone(), nowMs);
    }

    private void propose(Context ctx) {
        FormErrors form = FormErrors.of(ctx);
        long nowMs = clock.millis();
        Optional<DayNow> day = record.read(tx -> DayNow.read(tx, nowMs));
        Optional<Integer> minutes = minutes(form);
        if (minutes.isEmpty()) {
            ctx.status(422);
            answer(ctx, "Minutes are a whole number from -600 to 600, for example 10 or -5.", null);
            return;
        }
        Optional<Scenario.Change> change = change(form.typed("change"), minutes.get(), day, nowMs);
        if (change.isEmpty()) {
            ctx.status(422);
            answer(ctx, "The day has changed meanwhile: choose what changes from the list again.", null);
            return;
        }
        try {
            loadSolver.run();
            answer(ctx, "", day.map(d -> proposal(d, change.get(), nowMs)).orElse(null));
        } catch (SolverMissing e) {
            ctx.status(422);
            answer(
                    ctx,
                    "Plans cannot be computed on this laptop: " + e.getMessage()
                            + ". The page Now still tells the latest start of winding; plan by hand.",
                    null);
        }
    }

    /** Empty when the list does not offer it (any more). */
    private Optional<Scenario.Change> change(String key, int minutes, Optional<DayNow> day, long nowMs) {
        return key.isEmpty()
                ? Optional.of(Scenario.Change.NONE)
                : day.stream()
                        .flatMap(d -> of(d, nowMs).choices().toTry().stream())
                        .filter(possible -> possible.key().equals(key))
                        .findFirst()
                        .map(possible -> possible.change().by(minutes));
    }

    /** Nothing typed is none; empty for what is no number of minutes. */
    private static Optional<Integer> minutes(FormErrors form) {
        String typed = form.typed("minutes").strip();
        if (typed.isEmpty()) {
            return Optional.of(0);
        }
        return typed.matches("[-+]?\\d{1,3}")
                ? Optional.of(Integer.valueOf(typed)).filter(m -> Math.abs(m) <= Scenario.Change.MOST_MINUTES)
                : Optional.empty();
    }

    private DayView.Proposal proposal(DayNow day, Scenario.Change change, long nowMs) {
        ProposalPresenter made = ProposalPresenter.ask(day, of(day, nowMs), change);
        DayView.Proposal view = made.view(newId.get());
        proposals.keep(view.id(), made.toTake());
        return view;
    }

    private void take(Context ctx) {
        Optional<TakePlan.Take> kept = proposals.find(String.valueOf(ctx.formParam("proposal")));
        if (kept.isEmpty()) {
            ctx.status(409);
            answer(ctx, "This proposal is too old. Ask for another one.", null);
            return;
        }
        answer(ctx, FormActs.words(ctx, forms.submit(ctx, "plan.take", kept.get())), null);
    }

    /** Beside the day, which goes on living: what somebody reads must not go away under the eyes. */
    private void answer(Context ctx, String problem, DayView.@Nullable Proposal proposal) {
        page.fragment(ctx, "dayplan/_proposal.jte", new ProposalView(problem, proposal, false));
    }
}
