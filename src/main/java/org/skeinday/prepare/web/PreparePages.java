package org.skeinday.prepare.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.TodaysPull;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.CleanWinds;
import org.skeinday.contest.EventAdded;
import org.skeinday.exchange.Column;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.Preset;
import org.skeinday.prepare.Steps;
import org.skeinday.prepare.Thing;
import org.skeinday.prepare.action.PutRow;
import org.skeinday.prepare.action.RemoveRow;
import org.skeinday.review.ChangeNextTime;
import org.skeinday.review.store.BatchAges;
import org.skeinday.review.store.ReviewFacts;

/** Prepare: lists and forms of everything that a day needs. */
public final class PreparePages {
    private static final TypeReference<Map<String, String>> CELLS = new TypeReference<>() {};

    private final Desk desk;

    public PreparePages(Desk desk) {
        this.desk = desk;
    }

    public void register(Routes routes) {
        routes.get(
                "/prepare", Role.CAPTAIN, ctx -> desk.page().show(ctx, "Prepare", "prepare/overview.jte", overview()));
        routes.get("/prepare/{kind}", Role.CAPTAIN, ctx -> list(routes, ctx));
        routes.get("/prepare/{kind}/new", Role.CAPTAIN, this::fresh);
        routes.get("/prepare/{kind}/row/{id}", Role.CAPTAIN, this::edit);
        routes.post("/clean-winds", Role.CAPTAIN, this::confirm);
        routes.post("/prepare/{kind}/save", Role.CAPTAIN, this::save);
        routes.post("/prepare/{kind}/remove", Role.CAPTAIN, this::remove);
    }

    private static Thing thing(Context ctx) {
        return Thing.ofPath(ctx.pathParam("kind"))
                .orElseThrow(() -> Refusal.notFound("Nothing of that name is prepared here."));
    }

    private OverviewView overview() {
        Day day = desk.day();
        List<OverviewView.Step> steps = new ArrayList<>();
        boolean next = true;
        for (Steps.Step step : Steps.of(day)) {
            String state = step.done() ? "done" : next ? "next" : "later";
            next &= step.done();
            steps.add(new OverviewView.Step("/prepare/" + step.thing().path(), step.title(), step.words(), state));
        }
        String event = day.next().map(e -> e.name() + ", " + e.day()).orElse("");
        return desk.record()
                .read(tx -> new OverviewView(
                        event, steps, Links.MORE, Links.PRINTED, change(tx, day), aged(BatchAges.toBeBroken(tx))));
    }

    /** Before the first event is entered, the last of all; nothing while nobody may be helped. */
    private static OverviewView.@Nullable Change change(Tx tx, Day day) {
        String before = day.next().map(EventAdded::day).orElse("9999-12-31");
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
        Thing thing = thing(ctx);
        if (thing == Thing.FLIGHTS) {
            routes.refuseAdvice();
        }
        desk.page()
                .show(
                        ctx,
                        thing.title(),
                        "prepare/rows.jte",
                        new Lists(
                                        thing,
                                        desk.day(),
                                        desk.clock(),
                                        thing == Thing.CREW ? desk.record().read(CleanWinds::byPerson) : Map.of(),
                                        thing == Thing.STATIONS
                                                ? desk.record().read(TodaysPull::testNewtons)
                                                : OptionalDouble.empty())
                                .view());
    }

    private void fresh(Context ctx) {
        Thing thing = thing(ctx);
        Day day = desk.day();
        Map<String, String> values = first(thing, day);
        @Nullable String like = ctx.queryParam("like");
        row(thing, day, like == null ? "" : like).ifPresent(row -> {
            values.putAll(row.cells());
            values.remove(thing.shown().get(0)); // its own name is its own
        });
        @Nullable String preset = ctx.queryParam("preset");
        Preset.ofPath(preset == null ? "" : preset).ifPresent(p -> values.putAll(p.cells()));
        show(ctx, thing, view(thing, day, "", "", "", values, Map.of()));
    }

    /** What a new one most likely has. */
    private Map<String, String> first(Thing thing, Day day) {
        Map<String, String> values = new HashMap<>();
        for (Column column : DayRows.columns(thing.file())) {
            values.put(column.name(), column.otherwise());
        }
        if (values.containsKey("event") && thing != Thing.CREW) {
            day.next().ifPresent(event -> values.put("event", event.name()));
        }
        if (values.containsKey("team")) {
            day.entries().stream().filter(e -> e.own()).findFirst().ifPresent(own -> values.put("team", own.team()));
        }
        if (thing == Thing.EVENTS) {
            values.put("day", LocalDate.now(desk.clock()).toString());
        }
        if (thing == Thing.NOTES) {
            values.put("when", Lists.minute(desk.clock()));
        }
        return values;
    }

    private void edit(Context ctx) {
        Thing thing = thing(ctx);
        Day day = desk.day();
        DayRows.RowText row = row(thing, day, ctx.pathParam("id"))
                .orElseThrow(() -> Refusal.notFound("There is no such " + thing.one() + " any more."));
        show(ctx, thing, view(thing, day, row.id(), json(row.cells()), "", row.cells(), Map.of()));
    }

    private Optional<DayRows.RowText> row(Thing thing, Day day, String id) {
        return DayRows.of(day, desk.zone(), thing.file()).stream()
                .filter(row -> !id.isEmpty() && row.id().equals(id))
                .findFirst();
    }

    private void show(Context ctx, Thing thing, FormView view) {
        desk.page().show(ctx, thing.title(), "prepare/form.jte", view);
    }

    private FormView view(
            Thing thing,
            Day day,
            String id,
            String seen,
            String problem,
            Map<String, String> values,
            Map<String, String> messages) {
        String address = "/prepare/" + thing.path();
        List<FormView.Preset> presets = Preset.all().stream()
                .filter(p -> id.isEmpty() && p.thing() == thing)
                .map(p -> new FormView.Preset(address + "/new?preset=" + p.path(), p.name()))
                .toList();
        return new FormView(
                (id.isEmpty() ? "New " : "Change ") + thing.one(),
                address,
                address,
                id,
                seen,
                problem,
                !id.isEmpty() && !thing.isOfOneEvent() && thing != Thing.FLIGHTS,
                new Fields(thing, day).of(values, messages),
                presets);
    }

    private void save(Context ctx) {
        Thing thing = thing(ctx);
        Map<String, String> typed = typed(ctx, thing);
        String id = param(ctx, "id");
        var put = new PutRow.Put(
                thing.file(),
                id.isEmpty() ? null : id,
                typed,
                cells(param(ctx, "seen")),
                desk.zone().getId());
        Answer answer = desk.forms().submit(ctx, "prepare.put", put);
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty()) {
            ctx.header("HX-Redirect", after(ctx, thing, typed));
            ctx.status(204);
            return;
        }
        again(ctx, thing, answer, words, typed);
    }

    /** The winds that the program has counted become those of the person's line. */
    private void confirm(Context ctx) {
        String id = param(ctx, "id");
        DayRows.RowText row = row(Thing.CREW, desk.day(), id)
                .orElseThrow(() -> Refusal.notFound("There is no such person any more; look again."));
        String person = id.replaceFirst("~.*", "");
        String counted = String.valueOf(desk.record().read(CleanWinds::byPerson).getOrDefault(person, 0));
        if (!counted.equals(param(ctx, "winds"))) {
            throw new Refusal(409, "More was counted meanwhile: load the page again, then confirm.");
        }
        Map<String, String> cells = new LinkedHashMap<>(row.cells());
        cells.put("clean winds", counted);
        var put = new PutRow.Put(
                Thing.CREW.file(), id, cells, row.cells(), desk.zone().getId());
        String words = FormActs.words(ctx, desk.forms().submit(ctx, "prepare.put", put));
        if (!words.isEmpty()) {
            throw new Refusal(ctx.statusCode(), words);
        }
        ctx.header("HX-Redirect", "/prepare/crew");
        ctx.status(204);
    }

    /** To the list, or on to the next one like this. */
    private String after(Context ctx, Thing thing, Map<String, String> typed) {
        String list = "/prepare/" + thing.path();
        if (!param(ctx, "then").equals("another")) {
            return list;
        }
        String own = typed.getOrDefault(thing.shown().get(0), "");
        return DayRows.of(desk.day(), desk.zone(), thing.file()).stream()
                .filter(row -> own.equals(row.cells().get(thing.shown().get(0))))
                .findFirst()
                .map(row -> list + "/new?like=" + row.id())
                .orElse(list + "/new");
    }

    private void again(Context ctx, Thing thing, Answer answer, String words, Map<String, String> typed) {
        Day day = desk.day();
        String id = param(ctx, "id");
        Map<String, String> messages = answer instanceof Answer.Refused refused ? refused.fields() : Map.of();
        boolean beside = messages.keySet().stream().anyMatch(column -> !column.isEmpty());
        String seen = row(thing, day, id).map(row -> json(row.cells())).orElse("");
        String problem = beside && !messages.containsKey("") ? "Nothing was saved yet: see the marked fields." : words;
        desk.page().fragment(ctx, "prepare/_form.jte", view(thing, day, id, seen, problem, typed, messages));
    }

    private void remove(Context ctx) {
        Thing thing = thing(ctx);
        String id = param(ctx, "id");
        var remove = new RemoveRow.Remove(
                thing.file(), id, cells(param(ctx, "seen")), desk.zone().getId());
        Answer answer = desk.forms().submit(ctx, "prepare.remove", remove);
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty()) {
            ctx.header("HX-Redirect", "/prepare/" + thing.path());
            ctx.status(204);
            return;
        }
        again(ctx, thing, answer, words, typed(ctx, thing));
    }

    static Map<String, String> typed(Context ctx, Thing thing) {
        Map<String, String> typed = new LinkedHashMap<>();
        for (Column column : DayRows.columns(thing.file())) {
            List<String> values = ctx.formParams(Fields.parameter(column.name()));
            typed.put(column.name(), String.join(" | ", values).strip());
        }
        return typed;
    }

    static String param(Context ctx, String name) {
        String value = ctx.formParam(name);
        return value == null ? "" : value;
    }

    static String json(Map<String, String> cells) {
        return Json.MAPPER.valueToTree(new java.util.TreeMap<>(cells)).toString();
    }

    static @Nullable Map<String, String> cells(String json) {
        if (json.isEmpty()) {
            return null;
        }
        try {
            return Json.MAPPER.readValue(json, CELLS);
        } catch (JsonProcessingException e) {
            throw Refusal.malformed("This form came without what it had shown. Load the page again and repeat it.");
        }
    }
}
