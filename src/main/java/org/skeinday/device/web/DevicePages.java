package org.skeinday.device.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
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
     * @param isConnected whether a page of that device is in sight just now, by its id
     * @param endStreams closes the open streams of a device, by its id
     * @param randomHex 32 fresh random hexadecimal digits each time
     * @param isLent whether the students hold the laptop
     */
    public record Door(
            String joinToken,
            Network network,
            Supplier<String> randomHex,
            Supplier<List<JoinView.Person>> crew,
            Supplier<List<Device>> devices,
            Consumer<String> endStreams,
            Predicate<String> isConnected,
            PinGate pins,
            Sessions sessions,
            BooleanSupplier isLent) {}

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
        routes.openGet(
                "/hello",
                ctx -> page.show(
                        ctx, "Hello", "device/hello.jte", door.network().view()));
        routes.get(
                "/join/help",
                Role.CAPTAIN,
                ctx -> page.show(
                        ctx,
                        "A tablet cannot join",
                        "device/help.jte",
                        door.network().view()));
        routes.openPost("/join", own::join);
        routes.openPost("/join/who", own::who);
        routes.get(
                "/devices",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "Devices", "device/devices.jte", own.devices(ctx, FormErrors.none())));
        routes.get(
                "/devices/part",
                Role.CAPTAIN,
                ctx -> page.fragment(ctx, "device/_devices.jte", own.devices(ctx, FormErrors.none())));
        routes.post("/devices/{id}/end", Role.CAPTAIN, own::end);
        routes.post("/laptop/lend", Role.COACH, ctx -> own.lend(ctx, true));
        routes.post("/laptop/back", Role.CAPTAIN, own::takeBack);
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
            return new JoinView(mayKnow ? door.crew().get() : List.of(), form, joined, "", 0, null);
        }
        NetworkView network = door.network().view();
        String link = network.address() + "/join#" + door.joinToken();
        return new JoinView(door.crew().get(), form, false, Qr.path(link), Qr.side(link), network);
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
        String token = door.randomHex().get();
        ObjectNode content = Json.MAPPER.createObjectNode();
        content.put("tokenHash", TokenHash.of(token));
        content.put("person", form.typed("person"));
        content.put("role", form.typed("role"));
        Optional<String> repeated = door.sessions().repeated(form.typed("act"));
        Optional<Caller> known = Access.joined(context);
        if (known.isPresent()) {
            earlier(content, context, known.get());
            change(form, known.get().device(), content);
        } else if (repeated.isPresent()) {
            change(form, repeated.get(), content);
        } else {
            if (form.typed("act").matches("[0-9a-f]{32}")) {
                content.put("joiningHash", TokenHash.of(form.typed("act")));
            }
            submit("device.join", "new", form.typed("person"), content);
        }
        door.network().joinedAt(String.valueOf(context.header("Host")));
        KeptCookie.set(context, Access.COOKIE, token);
        context.header("HX-Redirect", form.typed("role").equals("timekeeper") ? "/timing" : "/");
        context.status(204);
    }

    /** The token it came with serves until the new one has come, with no more rights than before: its answer may be lost. */
    private static void earlier(ObjectNode content, Context context, Caller known) {
        Role asked = Role.ofWord(content.path("role").asText());
        content.put("earlierHash", TokenHash.of(String.valueOf(context.cookie(Access.COOKIE))));
        content.put("earlierRole", (known.role().covers(asked) ? asked : known.role()).word());
    }

    private void change(FormErrors form, String device, ObjectNode content) {
        submit("device.change", device, form.typed("person"), content.put("device", device));
        door.endStreams().accept(device); // its rights are others now
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

    private DevicesView devices(Context context, FormErrors form) {
        boolean atLaptop = Access.callerOf(context).isLaptop();
        return new DevicesView(
                door.devices().get().stream().map(this::row).toList(),
                atLaptop,
                door.isLent().getAsBoolean(),
                form);
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
        String problem = pins.problem(context.ip(), form.typed("pin"));
        if (!problem.isEmpty()) {
            page.invalid(context, "device/_devices.jte", devices(context, form.with("pin", problem)));
            return;
        }
        lend(context, false);
    }

    private void lend(Context context, boolean lent) {
        refuseElsewhere(context);
        submit("laptop.lend", Caller.LAPTOP, "", Json.MAPPER.createObjectNode().put("lent", lent));
        door.endStreams().accept(Caller.LAPTOP); // its rights are others now
        context.header("HX-Redirect", "/devices");
        context.status(204);
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
