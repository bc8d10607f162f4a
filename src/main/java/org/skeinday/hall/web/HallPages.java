package org.skeinday.hall.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.hall.Distance;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** The page Hall: the winding place by tape, what is too close and by how much, drawn from above. */
public final class HallPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final MotorsOfDay motors;

    public HallPages(ActStore record, FormActs forms, Page page, Clock clock, MotorsOfDay motors) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
        this.motors = motors;
    }

    public void register(Routes routes) {
        routes.get("/hall", Role.CAPTAIN, ctx -> page.show(ctx, "Hall", "hall/hall.jte", view(ctx, FormErrors.none())));
        routes.get("/hall/part", Role.CAPTAIN, this::part);
        routes.post("/hall/measure", Role.CAPTAIN, this::measure);
        routes.post("/hall/describe", Role.CAPTAIN, this::describe);
        routes.post("/hall/air", Role.CAPTAIN, this::air);
        routes.post("/hall/air/remove", Role.CAPTAIN, ctx -> which(ctx, "air.remove"));
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
        content.put("unit", unit(ctx));
        List<Map<String, String>> things = new ArrayList<>();
        for (int i = 0; i < PlaceMeasured.MOST_THINGS; i++) {
            Map<String, String> thing = new LinkedHashMap<>();
            for (String field : List.of("kind", "name", "how", "first", "second", "side", "blows")) {
                thing.put(field, typed.typed(field + i));
            }
            things.add(thing);
        }
        content.put("things", things);
        answered(ctx, "place.measure", content);
    }

    private void describe(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, Object> content = new LinkedHashMap<>();
        for (String field : List.of("hall", "ceiling", "obstructions", "note")) {
            content.put(field, typed.typed(field));
        }
        content.put("unit", unit(ctx));
        Map<String, String> distances = new LinkedHashMap<>();
        for (Distance distance : Distance.values()) {
            distances.put(distance.word(), typed.typed(distance.word()));
        }
        content.put("distances", distances);
        content.put("mayLess", Access.callerOf(ctx).role().covers(Role.COACH));
        answered(ctx, "hall.describe", content);
    }

    private void air(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, String> content = new LinkedHashMap<>();
        for (String field : List.of("hall", "celsius", "humidity")) {
            content.put(field, typed.typed(field));
        }
        answered(ctx, "air.measure", content);
    }

    private void answered(Context ctx, String kind, Object content) {
        FormErrors form = FormActs.errors(ctx, forms.submit(ctx, kind, content), "place");
        page.fragment(ctx, "hall/_hall.jte", view(ctx, form));
    }

    private void which(Context ctx, String kind) {
        answered(ctx, kind, Map.of("id", FormErrors.of(ctx).typed("id")));
    }

    /** In which the form said that it takes a bare number, also when the team has chosen others since. */
    private static String unit(Context ctx) {
        String shown = ctx.formParam("unit");
        return shown == null ? ReaderUnits.of(ctx).roomUnit() : shown;
    }

    private HallView view(Context ctx, FormErrors form) {
        String asked = ctx.queryParam("place");
        String sent = ctx.formParam("place");
        String edited = form.isEmpty() && ctx.formParam("hall") == null ? null : ctx.formParam("id");
        String wanted = asked != null ? asked : sent != null ? sent : edited == null ? "" : edited;
        return record.read(tx ->
                new HallPresenter(tx, ReaderUnits.of(ctx), clock, record.people()::name, motors, form).view(wanted));
    }
}
