package org.skeinday.hall.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.hall.Drawing;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.hall.Separation;
import org.skeinday.hall.Verdict;
import org.skeinday.hall.WindingPlace;
import org.skeinday.hall.store.PlaceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Record;
import org.skeinday.units.Length;
import org.skeinday.units.UnitSystem;

/** The page Hall: the winding place by tape, what is too close and by how much, drawn from above. */
public final class HallPages {
    private final Record record;
    private final FormActs forms;
    private final Page page;
    private final Function<Tx, Optional<Length>> longestStretch;

    /** @param longestStretch of today's motors; empty when there is none */
    public HallPages(Record record, FormActs forms, Page page, Function<Tx, Optional<Length>> longestStretch) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.longestStretch = longestStretch;
    }

    public void register(Routes routes) {
        routes.get("/hall", Role.CAPTAIN, ctx -> page.show(ctx, "Hall", "hall/hall.jte", view(ctx, FormErrors.none())));
        routes.get("/hall/part", Role.CAPTAIN, this::part);
        routes.post("/hall/measure", Role.CAPTAIN, this::measure);
        routes.post("/hall/use", Role.CAPTAIN, ctx -> which(ctx, "place.use"));
        routes.post("/hall/remove", Role.CAPTAIN, ctx -> which(ctx, "place.remove"));
    }

    private void part(Context ctx) {
        page.fragment(ctx, "hall/_seen.jte", view(ctx, FormErrors.none()));
    }

    private void measure(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, Object> content = new LinkedHashMap<>();
        for (String field : List.of("id", "hall", "lane", "length", "past", "drift", "speed")) {
            content.put(field, typed.typed(field));
        }
        content.put("unit", units(ctx) == UnitSystem.METRIC ? "m" : "ft");
        List<Map<String, String>> things = new ArrayList<>();
        for (int i = 0; i < PlaceMeasured.MOST_THINGS; i++) {
            Map<String, String> thing = new LinkedHashMap<>();
            for (String field : List.of("kind", "name", "how", "first", "second", "side", "blows")) {
                thing.put(field, typed.typed(field + i));
            }
            things.add(thing);
        }
        content.put("things", things);
        Answer answer = forms.submit(ctx, "place.measure", content);
        FormErrors form = FormActs.errors(ctx, answer, "place");
        page.fragment(ctx, "hall/_hall.jte", view(ctx, form));
    }

    private void which(Context ctx, String kind) {
        FormErrors typed = FormErrors.of(ctx);
        FormErrors form = FormActs.errors(ctx, forms.submit(ctx, kind, Map.of("id", typed.typed("id"))), "place");
        page.fragment(ctx, "hall/_hall.jte", view(ctx, form));
    }

    /** Each device shows its reader's units; the cookie is the one of all pages. */
    private static UnitSystem units(Context ctx) {
        String kept = ctx.cookie("units");
        return UnitSystem.ofWord(kept == null ? "" : kept);
    }

    private HallView view(Context ctx, FormErrors form) {
        UnitSystem units = units(ctx);
        String asked = ctx.queryParam("place");
        String sent = form.isEmpty() && ctx.formParam("hall") == null ? null : ctx.formParam("id");
        return record.read(tx -> {
            @Nullable PlaceMeasured inUse = PlaceStore.inUse(tx).orElse(null);
            String wanted = asked != null ? asked : sent == null ? "" : sent;
            @Nullable
            PlaceMeasured shown =
                    wanted.equals("new") ? null : PlaceStore.find(tx, wanted).orElse(inUse);
            String used = inUse == null ? "" : inUse.id();
            return new HallView(
                    PlaceStore.all(tx).stream()
                            .map(p -> new HallView.Kept(
                                    p.id(),
                                    p.hall() + ", " + p.lane(),
                                    p.id().equals(used),
                                    shown != null && p.id().equals(shown.id())))
                            .toList(),
                    shown == null ? null : seen(tx, shown, units),
                    PlaceForm.of(shown, form, units),
                    "/hall/part" + (shown == null ? "?place=new" : "?place=" + shown.id()),
                    form);
        });
    }

    private HallView.Seen seen(Tx tx, PlaceMeasured measured, UnitSystem units) {
        WindingPlace place = measured.place();
        Optional<Length> stretch = longestStretch.apply(tx);
        Separation least = Separation.usual();
        Verdict verdict = least.judge(place, stretch.orElse(null));
        return new HallView.Seen(
                measured.hall() + ", " + measured.lane(),
                verdict.isClear()
                        ? verdict.isComplete() ? "Nothing is too close." : "Nothing that was measured is too close."
                        : verdict.findings().size() + (verdict.findings().size() == 1 ? " thing is" : " things are")
                                + " not right.",
                verdict.isClear(),
                verdict.findings().stream()
                        .map(f -> new HallView.Wrong(f.text(units), f.rule().reason()))
                        .toList(),
                verdict.unknown().stream()
                        .map(u -> Character.toUpperCase(u.charAt(0)) + u.substring(1) + ".")
                        .toList(),
                stretch.map(s -> "Longest stretch of today's motors: " + units.length(s) + ".")
                        .orElse(""),
                Drawing.of(place, least, verdict, units));
    }
}
