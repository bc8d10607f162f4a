package org.skeinday.device.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.skeinday.device.Device;
import org.skeinday.device.TokenHash;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.KeptCookie;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.Acts;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Json;

/** Joining, and the list of those that joined. */
public final class DevicePages {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMM HH:mm", java.util.Locale.ROOT);

    private static final String OTHER_CODE = "This link is not from this day's join code: scan it again.";

    private final Page page;
    private final Acts acts;
    private final Clock clock;
    private final Door door;
    private final PinGate pins;

    /**
     * What joining needs to know.
     *
     * @param joinToken of this data folder, at least 128 bits, as hexadecimal digits
     * @param address for the QR code, for example {@code http://192.168.1.5:7070}
     * @param isConnected whether a page of that device is in sight just now, by its id
     * @param endStreams closes the open streams of a device, by its id
     * @param randomHex 32 fresh random hexadecimal digits each time
     */
    public record Door(
            String joinToken,
            Supplier<String> address,
            Supplier<String> randomHex,
            Supplier<List<JoinView.Person>> crew,
            Supplier<List<Device>> devices,
            Consumer<String> endStreams,
            Predicate<String> isConnected,
            PinGate pins) {}

    private DevicePages(Page page, Acts acts, Clock clock, Door door) {
        this.page = page;
        this.acts = acts;
        this.clock = clock;
        this.door = door;
        this.pins = door.pins();
    }

    public static void register(Routes routes, Page page, Acts acts, Clock clock, Door door) {
        DevicePages own = new DevicePages(page, acts, clock, door);
        routes.openGet("/join", own::joinPage);
        routes.openPost("/join", own::join);
        routes.openPost("/join/who", own::who);
        routes.get("/devices", Role.CAPTAIN, ctx -> page.show(ctx, "Devices", "device/devices.jte", own.devices()));
        routes.get("/devices/part", Role.CAPTAIN, ctx -> page.fragment(ctx, "device/_devices.jte", own.devices()));
        routes.post("/devices/{id}/end", Role.CAPTAIN, own::end);
    }

    /** A device that has joined is shown who uses it, to be changed. */
    private void joinPage(Context context) {
        FormErrors first = Access.joined(context)
                .map(known -> new FormErrors(Map.of("person", known.person()), Map.of()))
                .orElse(FormErrors.none());
        page.show(context, "Join", "device/join.jte", view(context, first));
    }

    private JoinView view(Context context, FormErrors form) {
        boolean joined = Access.joined(context).isPresent();
        if (joined || !Access.onThisMachine(context)) {
            boolean mayKnow = joined || hasCode(form);
            return new JoinView(mayKnow ? door.crew().get() : List.of(), form, joined, "", 0);
        }
        String link = door.address().get() + "/join#" + door.joinToken();
        return new JoinView(door.crew().get(), form, false, Qr.path(link), Qr.side(link));
    }

    /** The form again with the crew's names, for a device that has the code. */
    private void who(Context context) {
        FormErrors form = FormErrors.of(context);
        if (!hasCode(form)) {
            page.invalid(context, "device/_join.jte", view(context, form.with("token", OTHER_CODE)));
            return;
        }
        page.fragment(context, "device/_join.jte", view(context, form));
    }

    private boolean hasCode(FormErrors form) {
        return TokenHash.of(form.typed("token")).equals(TokenHash.of(door.joinToken()));
    }

    private void join(Context context) {
        FormErrors form = checked(context, FormErrors.of(context));
        if (!form.isEmpty()) {
            page.invalid(context, "device/_join.jte", view(context, form));
            return;
        }
        Optional<Caller> known = Access.joined(context);
        // Who has joined keeps the token: were it another, a lost answer would shut the device out with its entries.
        String token = known.isPresent()
                ? String.valueOf(context.cookie(Access.COOKIE))
                : door.randomHex().get();
        ObjectNode content = Json.MAPPER.createObjectNode();
        content.put("tokenHash", TokenHash.of(token));
        content.put("person", form.typed("person"));
        content.put("role", form.typed("role"));
        if (known.isPresent()) {
            String device = known.get().device();
            submit("device.change", device, form.typed("person"), content.put("device", device));
            door.endStreams().accept(device); // its rights are others now
        } else {
            submit("device.join", "new", form.typed("person"), content);
        }
        KeptCookie.set(context, Access.COOKIE, token);
        context.header("HX-Redirect", form.typed("role").equals("timekeeper") ? "/timing" : "/");
        context.status(204);
    }

    private FormErrors checked(Context context, FormErrors form) {
        FormErrors found = form;
        boolean joined = Access.joined(context).isPresent();
        if (!joined && !hasCode(form)) {
            found = found.with("token", OTHER_CODE);
        }
        String person = form.typed("person");
        if (!person.isEmpty() && door.crew().get().stream().noneMatch(p -> p.id().equals(person))) {
            found = found.with("person", "Choose a name of the list, or nobody in particular.");
        }
        String role = form.typed("role");
        if (!List.of("viewer", "helper", "timekeeper", "captain", "coach").contains(role)) {
            return found.with("role", "Choose what this device is for.");
        }
        if (found.isEmpty() && role.equals("coach")) {
            String problem = pins.problem(context.ip(), form.typed("pin"));
            return problem.isEmpty() ? found : found.with("pin", problem);
        }
        return found;
    }

    private DevicesView devices() {
        return new DevicesView(door.devices().get().stream().map(this::row).toList());
    }

    private DevicesView.Row row(Device device) {
        String joined = TIME.format(Instant.ofEpochMilli(device.joinedAtMs()).atZone(clock.getZone()));
        String who = door.crew().get().stream()
                .filter(person -> person.id().equals(device.person()))
                .map(JoinView.Person::name)
                .findFirst()
                .orElse("nobody chosen");
        return new DevicesView.Row(
                device.id(), who, device.role(), joined, door.isConnected().test(device.id()));
    }

    private void end(Context context) {
        ObjectNode content = Json.MAPPER.createObjectNode().put("device", context.pathParam("id"));
        submit(
                "device.end",
                Access.callerOf(context).device(),
                Access.callerOf(context).person(),
                content);
        door.endStreams().accept(context.pathParam("id"));
        context.header("HX-Redirect", "/devices");
        context.status(204);
    }

    private void submit(String kind, String device, String person, ObjectNode content) {
        Act act = new Act(door.randomHex().get(), kind, device, person, clock.instant(), content);
        Answer answer = acts.submit(act);
        if (answer instanceof Answer.Unknown unknown) {
            throw Refusal.notFound(unknown.reason());
        }
        if (answer instanceof Answer.Refused refused) {
            throw new Refusal(409, refused.reason());
        }
        if (!(answer instanceof Answer.Saved)) {
            throw new Refusal(503, "Not known yet whether this was saved: try again.");
        }
    }
}
