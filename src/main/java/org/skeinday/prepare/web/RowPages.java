package org.skeinday.prepare.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.web.ForecastWords;
import org.skeinday.attempt.web.GivenPin;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayRows;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Answer;
import org.skeinday.prepare.Preset;
import org.skeinday.prepare.Sheet;
import org.skeinday.prepare.action.FrozenRules;
import org.skeinday.prepare.action.PutRow;
import org.skeinday.prepare.action.RemoveRow;

/** The form of one row: a new one, one that is changed, one that is taken away. */
final class RowPages {
    private final PrepareContext desk;

    RowPages(PrepareContext desk) {
        this.desk = desk;
    }

    void register(Routes routes) {
        routes.get("/prepare/{kind}/new", Role.CAPTAIN, this::fresh);
        routes.get("/prepare/{kind}/row/{id}", Role.CAPTAIN, this::edit);
        routes.post("/prepare/{kind}/save", Role.CAPTAIN, this::save);
        routes.post("/prepare/{kind}/remove", Role.CAPTAIN, this::remove);
    }

    private void fresh(Context ctx) {
        Sheet thing = RowForm.thing(ctx);
        Day day = desk.day();
        var first = new FirstValues(desk, thing, day);
        Optional<DayRows.RowText> like = RowForm.row(desk, thing, day, asked(ctx, "like"));
        Map<String, String> values = like.map(row -> first.like(row.cells())).orElseGet(first::of);
        values.putAll(RowForm.asked(ctx, thing)); // typed before a preset was chosen
        Preset.ofPath(asked(ctx, "preset")).ifPresent(p -> values.putAll(p.cells()));
        FormView form = view(ctx, thing, day, "", "", "", values, Map.of());
        show(
                ctx,
                thing,
                like.map(row -> form.saying(SavedRow.words(thing, row.cells()))).orElse(form));
    }

    private static String asked(Context ctx, String name) {
        String value = ctx.queryParam(name);
        return value == null ? "" : value;
    }

    private void edit(Context ctx) {
        Sheet thing = RowForm.thing(ctx);
        Day day = desk.day();
        DayRows.RowText row = RowForm.row(desk, thing, day, ctx.pathParam("id"))
                .orElseThrow(() -> Refusal.notFound("There is no such " + thing.one() + " any more."));
        show(ctx, thing, view(ctx, thing, day, row.id(), RowForm.json(row.cells()), "", row.cells(), Map.of()));
    }

    private void show(Context ctx, Sheet thing, FormView view) {
        desk.page().show(ctx, thing.title(), "prepare/form.jte", view);
    }

    private FormView view(
            Context ctx,
            Sheet thing,
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
                "",
                problem,
                !id.isEmpty() && !thing.isOfOneEvent() && thing != Sheet.FLIGHTS,
                new Fields(thing, day, ReaderUnits.of(ctx)).of(values, messages),
                presets,
                messages.getOrDefault(AskedOnce.FIELD, ""),
                FrozenForm.view(ctx, desk, thing, values.getOrDefault("event", ""), id, messages));
    }

    private void save(Context ctx) {
        Sheet thing = RowForm.thing(ctx);
        Map<String, String> typed = RowForm.typed(ctx, thing);
        String wrongPin = GivenPin.problem(ctx, desk.pins());
        if (!wrongPin.isEmpty()) {
            ctx.status(422);
            Map<String, String> beside = Map.of(FrozenRules.PIN, wrongPin, FrozenRules.MOVES, FrozenForm.shown(ctx));
            again(ctx, thing, new Answer.Refused(wrongPin, beside), wrongPin, typed);
            return;
        }
        String id = RowForm.param(ctx, "id");
        var put = new PutRow.Put(
                thing.file(),
                id.isEmpty() ? null : id,
                typed,
                RowForm.cells(RowForm.param(ctx, "seen")),
                desk.zone().getId(),
                null,
                RowForm.param(ctx, AskedOnce.FIELD),
                FrozenForm.said(ctx));
        ForecastWords before = figures(ctx, thing, id);
        Answer answer = desk.forms().submit(ctx, "prepare.put", put);
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty() && answer instanceof Answer.Saved saved) {
            desk.did().say(id, before.changed(figures(ctx, thing, id)));
            ctx.header("HX-Redirect", after(ctx, thing, SavedRow.of(desk, thing, id, saved.actId(), typed)));
            ctx.status(204);
            return;
        }
        again(ctx, thing, answer, words, typed);
    }

    /** What pages show that rests on such a row. */
    private ForecastWords figures(Context ctx, Sheet thing, String id) {
        return switch (thing) {
            case MOTORS -> ForecastWords.ofMotor(desk.record(), id, ReaderUnits.of(ctx));
            case BATCHES -> ForecastWords.ofBatch(desk.record(), id, ReaderUnits.of(ctx));
            case STATIONS -> ForecastWords.ofAll(desk.record(), ReaderUnits.of(ctx));
            default -> ForecastWords.of(desk.record(), id);
        };
    }

    /** To the list, or on to the next one like this. */
    private static String after(Context ctx, Sheet thing, Optional<DayRows.RowText> saved) {
        String list = "/prepare/" + thing.path();
        boolean another = RowForm.param(ctx, "then").equals("another");
        return saved.map(row -> list + (another ? "/new?like=" : "?saved=") + row.id())
                .orElse(another ? list + "/new" : list);
    }

    private void again(Context ctx, Sheet thing, Answer answer, String words, Map<String, String> typed) {
        Day day = desk.day();
        String id = RowForm.param(ctx, "id");
        Map<String, String> messages = answer instanceof Answer.Refused refused ? refused.fields() : Map.of();
        boolean beside = messages.keySet().stream().anyMatch(column -> !column.isEmpty());
        String seen = RowForm.row(desk, thing, day, id)
                .map(row -> RowForm.json(row.cells()))
                .orElse("");
        String problem = beside && !messages.containsKey("") ? "Nothing was saved yet: see the marked fields." : words;
        desk.page().fragment(ctx, "prepare/_form.jte", view(ctx, thing, day, id, seen, problem, typed, messages));
    }

    private void remove(Context ctx) {
        Sheet thing = RowForm.thing(ctx);
        String id = RowForm.param(ctx, "id");
        var remove = new RemoveRow.Remove(
                thing.file(),
                id,
                RowForm.cells(RowForm.param(ctx, "seen")),
                desk.zone().getId());
        Answer answer = desk.forms().submit(ctx, "prepare.remove", remove);
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty()) {
            ctx.header("HX-Redirect", "/prepare/" + thing.path());
            ctx.status(204);
            return;
        }
        again(ctx, thing, answer, words, RowForm.typed(ctx, thing));
    }
}
