package org.skeinday.prepare.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.TodaysPull;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.CleanWinds;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.exchange.CrewLineId;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.prepare.PrepareSteps;
import org.skeinday.prepare.Sheet;
import org.skeinday.prepare.action.PutRow;
import org.skeinday.review.ChangeNextTime;
import org.skeinday.review.store.BatchAges;
import org.skeinday.review.store.ReviewFacts;

/** Prepare: how far the day is prepared, and lists of everything that it needs; a row's form is in {@link RowPages}. */
public final class PreparePages {
    private final PrepareContext desk;

    public PreparePages(PrepareContext desk) {
        this.desk = desk;
    }

    public void register(Routes routes) {
        routes.get(
                "/prepare", Role.CAPTAIN, ctx -> desk.page().show(ctx, "Prepare", "prepare/overview.jte", overview()));
        routes.get("/prepare/{kind}", Role.CAPTAIN, ctx -> list(routes, ctx));
        routes.post("/clean-winds", Role.CAPTAIN, this::confirm);
        new RowPages(desk).register(routes);
    }

    private OverviewView overview() {
        Day day = desk.day();
        List<OverviewView.Step> steps = new ArrayList<>();
        boolean next = true;
        for (PrepareSteps.Step step : PrepareSteps.of(day)) {
            String state = step.done() ? "done" : next ? "next" : "later";
            next &= step.done();
            steps.add(new OverviewView.Step("/prepare/" + step.thing().path(), step.title(), step.words(), state));
        }
        String event = desk.atHand().map(e -> e.name() + ", " + e.day()).orElse("");
        return desk.record()
                .read(tx -> new OverviewView(
                        event, steps, Links.MORE, Links.PRINTED, change(tx), aged(BatchAges.toBeBroken(tx))));
    }

    /** Before the first event is entered, the last of all; nothing while nobody may be helped. */
    private static OverviewView.@Nullable Change change(Tx tx) {
        String before = EventStore.next(tx).map(EventAdded::day).orElse("9999-12-31");
        return AttemptStore.quietNow(tx).isPresent()
                ? null
                : ChangeNextTime.before(before, ReviewFacts.changes(tx))
                        .map(d -> new OverviewView.Change(d.event(), d.change().lines()))
                        .orElse(null);
    }

    private static String aged(List<String> batches) {
        return batches.isEmpty()
                ? ""
                : (batches.size() == 1 ? "Batch " : "Batches ") + String.join(", ", batches)
                        + ": break two or three motors before K and ceiling are used again.";
    }

    /** Flights are what others have measured. */
    private void list(Routes routes, Context ctx) {
        Sheet thing = RowForm.thing(ctx);
        if (thing == Sheet.FLIGHTS) {
            routes.refuseAdvice();
        }
        @Nullable String saved = ctx.queryParam("saved");
        desk.page()
                .show(
                        ctx,
                        thing.title(),
                        "prepare/rows.jte",
                        new Lists(
                                        thing,
                                        desk.day(),
                                        desk.clock(),
                                        thing == Sheet.CREW ? desk.record().read(CleanWinds::byPerson) : Map.of(),
                                        thing == Sheet.STATIONS
                                                ? desk.record().read(TodaysPull::testNewtons)
                                                : OptionalDouble.empty())
                                .view(
                                        saved == null ? "" : saved,
                                        saved == null ? "" : desk.did().take(saved),
                                        PartOfRows.of(ctx)));
    }

    /** The winds that the program has counted become those of the person's line. */
    private void confirm(Context ctx) {
        String id = RowForm.param(ctx, "id");
        DayRows.RowText row = RowForm.row(desk, Sheet.CREW, desk.day(), id)
                .orElseThrow(() -> Refusal.notFound("There is no such person any more; look again."));
        String person = CrewLineId.parse(id).personId();
        String counted = String.valueOf(desk.record().read(CleanWinds::byPerson).getOrDefault(person, 0));
        if (!counted.equals(RowForm.param(ctx, "winds"))) {
            throw new Refusal(409, "More was counted meanwhile: load the page again, then confirm.");
        }
        Map<String, String> cells = new LinkedHashMap<>(row.cells());
        cells.put("clean winds", counted);
        var put = new PutRow.Put(
                Sheet.CREW.file(), id, cells, row.cells(), desk.zone().getId());
        String words = FormActs.words(ctx, desk.forms().submit(ctx, "prepare.put", put));
        if (!words.isEmpty()) {
            throw new Refusal(ctx.statusCode(), words);
        }
        ctx.header("HX-Redirect", "/prepare/crew");
        ctx.status(204);
    }
}
