package org.skeinday.device.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.skeinday.device.Device;
import org.skeinday.device.TokenHash;
import org.skeinday.device.TypedCode;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Acts;
import org.skeinday.platform.record.Json;

/** The list of the devices that joined, and whether the laptop itself is lent; joining is in {@link JoinPages}. */
public final class DevicePages {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMM HH:mm", java.util.Locale.ROOT);

    private final Page page;
    private final DeviceActs acts;
    private final Asking asking;
    private final Clock clock;
    private final Door door;

    /**
     * What joining needs to know.
     *
     * @param codes that let devices in
     * @param isConnected whether a page of that device is in sight just now, by its id
     * @param endStreams closes the open streams of a device, by its id
     * @param randomHex 32 fresh random hexadecimal digits each time
     * @param isLent whether the students hold the laptop
     */
    public record Door(
            JoinCodes codes,
            Network network,
            Supplier<String> randomHex,
            Supplier<List<JoinView.Person>> crew,
            Supplier<List<Device>> devices,
            Consumer<String> endStreams,
            Predicate<String> isConnected,
            PinGate pins,
            Sessions sessions,
            BooleanSupplier isLent) {
        /** In words, for a list of devices. */
        String nameOf(String person) {
            return crew.get().stream()
                    .filter(one -> one.id().equals(person))
                    .map(JoinView.Person::name)
                    .findFirst()
                    .orElse("nobody chosen");
        }
    }

    private DevicePages(Page page, DeviceActs acts, Asking asking, Clock clock, Door door) {
        this.page = page;
        this.asking = asking;
        this.acts = acts;
        this.clock = clock;
        this.door = door;
    }

    public static void register(Routes routes, Page page, Acts acts, Clock clock, Door door) {
        DeviceActs said = new DeviceActs(acts, door.randomHex(), clock);
        Asking asking = new Asking(page, door, said);
        DevicePages own = new DevicePages(page, said, asking, clock, door);
        Joining joining = new Joining(door, new CodeGate(door.codes(), clock), new JoinRate(clock));
        new JoinPages(page, door, said, asking, joining).register(routes);
        new SpectatorPages(door.codes(), door.randomHex()).register(routes);
        asking.register(routes);
        new CodePages(door.codes(), own::part).register(routes);
        routes.get(
                "/devices",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "Devices", "device/devices.jte", own.devices(ctx, FormErrors.none())));
        routes.get("/devices/part", Role.CAPTAIN, own::part);
        routes.post("/devices/{id}/end", Role.CAPTAIN, own::end);
        routes.post("/laptop/lend", Role.COACH, ctx -> own.lend(ctx, true));
        routes.post("/laptop/back", Role.CAPTAIN, own::takeBack);
    }

    private void part(Context context) {
        page.fragment(context, "device/_devices.jte", devices(context, FormErrors.none()));
    }

    private DevicesView devices(Context context, FormErrors form) {
        boolean atLaptop = Access.callerOf(context).isLaptop();
        return new DevicesView(
                door.devices().get().stream().map(this::row).toList(),
                asking.view(context),
                atLaptop,
                door.isLent().getAsBoolean(),
                form,
                Access.callerOf(context).role() == Role.COACH ? codes() : null);
    }

    private DevicesView.Codes codes() {
        return new DevicesView.Codes(
                TypedCode.shown(door.codes().typed()),
                door.codes().ofDay().map(TypedCode::shown).orElse(""));
    }

    /** Lent or not is of the laptop itself: nobody says so from elsewhere. */
    private static void refuseElsewhere(Context context) {
        if (!Access.callerOf(context).isLaptop()) {
            throw new Refusal(403, "This is said on the laptop itself.");
        }
    }

    private void takeBack(Context context) {
        refuseElsewhere(context);
        FormErrors form = FormErrors.of(context);
        String problem = door.pins().problem(context.ip(), form.typed("pin"));
        if (!problem.isEmpty()) {
            page.invalid(context, "device/_devices.jte", devices(context, form.with("pin", problem)));
            return;
        }
        lend(context, false);
    }

    private void lend(Context context, boolean lent) {
        refuseElsewhere(context);
        acts.submit(
                context,
                "laptop.lend",
                Caller.LAPTOP,
                "",
                Json.MAPPER.createObjectNode().put("lent", lent));
        door.endStreams().accept(Caller.LAPTOP); // its rights are others now
        context.header("HX-Redirect", "/devices");
        context.status(204);
    }

    private DevicesView.Row row(Device device) {
        String joined = TIME.format(Instant.ofEpochMilli(device.joinedAtMs()).atZone(clock.getZone()));
        return new DevicesView.Row(
                device.id(),
                door.nameOf(device.person()),
                device.role(),
                joined,
                door.isConnected().test(device.id()));
    }

    /** A coach's device has more rights than a captain: who has fewer does not end it. */
    private void refuseAboveOwn(Context context, String device) {
        Role own = Access.callerOf(context).role();
        boolean above = door.devices().get().stream()
                .filter(one -> one.id().equals(device))
                .anyMatch(one -> !own.covers(Role.ofWord(one.role())));
        if (above) {
            throw new Refusal(403, "A coach's device is ended on the laptop or by a coach.");
        }
    }

    private void end(Context context) {
        refuseAboveOwn(context, context.pathParam("id"));
        ObjectNode content = Json.MAPPER
                .createObjectNode()
                .put("device", context.pathParam("id"))
                .put("linkHash", TokenHash.of(door.codes().link().text()));
        acts.submit(
                context,
                "device.end",
                Access.callerOf(context).device(),
                Access.callerOf(context).person(),
                content);
        door.endStreams().accept(context.pathParam("id"));
        if (Access.callerOf(context).role() == Role.COACH && "new".equals(context.formParam("codes"))) {
            CodePages.done(context, door.codes()::renew);
        }
        context.header("HX-Redirect", "/devices");
        context.status(204);
    }
}
