package org.skeinday.device.web;

import io.javalin.http.Context;
import java.util.List;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Json;

/** The devices that ask to be timekeeper or captain, and the coach's yes or no. */
final class Asking {
    private final Page page;
    private final DevicePages.Door door;
    private final DeviceActs acts;

    Asking(Page page, DevicePages.Door door, DeviceActs acts) {
        this.page = page;
        this.door = door;
        this.acts = acts;
    }

    void register(Routes routes) {
        routes.get("/devices/asking", Role.CAPTAIN, ctx -> page.fragment(ctx, "device/_asking.jte", view(ctx)));
        routes.post("/devices/{id}/yes", Role.COACH, ctx -> answer(ctx, true));
        routes.post("/devices/{id}/no", Role.COACH, ctx -> answer(ctx, false));
    }

    AskingView view(Context context) {
        List<AskingView.Row> rows = door.devices().get().stream()
                .filter(device -> !device.asked().isEmpty())
                .map(device -> new AskingView.Row(
                        device.id(),
                        device.person().isEmpty() ? "A device" : door.nameOf(device.person()),
                        device.asked(),
                        device.person()))
                .toList();
        return new AskingView(rows, Access.callerOf(context).role() == Role.COACH);
    }

    private void answer(Context context, boolean yes) {
        acts.submit(
                context,
                "device.answer",
                Access.callerOf(context).device(),
                Access.callerOf(context).person(),
                Json.MAPPER
                        .createObjectNode()
                        .put("device", context.pathParam("id"))
                        .put("yes", yes)
                        .put("asked", String.valueOf(context.formParam("asked")))
                        .put("person", String.valueOf(context.formParam("person"))));
        page.fragment(context, "device/_asking.jte", view(context));
    }
}
