package org.skeinday.device.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.device.Device;
import org.skeinday.device.TokenHash;
import org.skeinday.device.TypedCode;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.KeptCookie;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Json;

/** Joining: who uses a device and what it may do, asked again when it changes. */
final class JoinPages {
    private final Page page;
    private final DevicePages.Door door;
    private final DeviceActs acts;
    private final Asking asking;
    private final Joining joining;

    JoinPages(Page page, DevicePages.Door door, DeviceActs acts, Asking asking, Joining joining) {
        this.page = page;
        this.door = door;
        this.acts = acts;
        this.asking = asking;
        this.joining = joining;
    }

    void register(Routes routes) {
        routes.openGet("/join", this::joinPage);
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
        routes.get("/join/code", Role.CAPTAIN, this::code);
        routes.get("/join/waiting", Role.VIEWER, this::waiting);
        routes.openPost("/join", this::join);
        routes.openPost("/join/who", this::who);
    }

    /** A device that has joined is shown who uses it, to be changed. */
    private void joinPage(Context context) {
        Optional<Device> known = joining.device(context);
        FormErrors first = known.map(device -> new FormErrors(Map.of("person", device.person()), Map.of()))
                .orElse(FormErrors.none());
        boolean mayShow = mayShowCode(context);
        page.show(
                context,
                "Join",
                "device/join.jte",
                new JoinView(
                        known.isPresent() || mayShow ? door.crew().get() : List.of(),
                        first,
                        known.isPresent(),
                        known.map(JoinPages::waitingView).orElse(null),
                        mayShow ? invitation() : null,
                        mayShow ? asking.view(context) : null));
    }

    /** The form alone. @param mayKnow whether the crew's names are shown */
    private JoinView view(Context context, FormErrors form, boolean mayKnow) {
        boolean joined = Access.joined(context).isPresent();
        return new JoinView(mayKnow ? door.crew().get() : List.of(), form, joined, null, null, null);
    }

    /** On the laptop alone: what hangs on a wall is shown by who hung it there. */
    private static boolean mayShowCode(Context context) {
        return Access.onThisMachine(context) && Access.joined(context).isEmpty();
    }

    private void code(Context context) {
        if (!mayShowCode(context)) {
            throw Refusal.notFound("The code is shown on the laptop itself.");
        }
        page.fragment(context, "device/_code.jte", invitation());
    }

    private InvitationView invitation() {
        NetworkView network = door.network().view();
        String link = joinLink(network.address());
        List<String> links = network.all().stream().map(this::joinLink).toList();
        String typed = TypedCode.shown(door.codes().typed());
        String look = network.address() + SpectatorPages.path(door.codes());
        var spectators = new InvitationView.Spectators(look, Qr.path(look), Qr.side(look));
        return new InvitationView(typed, links, Qr.path(link), Qr.side(link), spectators, network);
    }

    /** Without what stands behind the # nobody gets in without typing. */
    private String joinLink(String address) {
        return address + "/join#" + door.codes().link().text();
    }

    private void waiting(Context context) {
        WaitingView none = new WaitingView("", "", "", "");
        page.fragment(
                context,
                "device/_waiting.jte",
                joining.device(context).map(JoinPages::waitingView).orElse(none));
    }

    private static WaitingView waitingView(Device device) {
        return new WaitingView(device.role(), device.asked(), device.allowed(), device.person());
    }

    /** The form again with the crew's names, for a device that has the code. */
    private void who(Context context) {
        FormErrors form = FormErrors.of(context);
        CodeGate.Found found = joining.atDoor(context, form);
        if (found.opens() == CodeGate.Opens.NOTHING) {
            page.invalid(context, "device/_join.jte", view(context, form.with("code", found.problem()), false));
            return;
        }
        page.fragment(context, "device/_join.jte", view(context, form, true));
    }

    private void join(Context context) {
        Joining.Outcome outcome = joining.of(context, FormErrors.of(context));
        FormErrors form = outcome.form();
        if (!form.isEmpty()) {
            page.invalid(context, "device/_join.jte", view(context, form, outcome.mayKnow()));
            return;
        }
        String token = door.randomHex().get();
        ObjectNode content = Json.MAPPER.createObjectNode();
        content.put("tokenHash", TokenHash.of(token));
        content.put("person", form.typed("person"));
        content.put("role", outcome.role());
        content.put("asked", outcome.asked());
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
            acts.submit("device.join", "new", form.typed("person"), content);
            joining.count(context);
        }
        door.network().joinedAt(String.valueOf(context.header("Host")));
        KeptCookie.set(context, Access.COOKIE, token);
        context.header("HX-Redirect", firstPage(outcome));
        context.status(204);
    }

    private static String firstPage(Joining.Outcome outcome) {
        return outcome.asked() != null ? "/join" : outcome.role().equals("timekeeper") ? "/timing" : "/";
    }

    /** The token it came with serves until the new one has come, with no more rights than before: its answer may be lost. */
    private static void earlier(ObjectNode content, Context context, Caller known) {
        Role asked = Role.ofWord(content.path("role").asText());
        content.put("earlierHash", TokenHash.of(String.valueOf(context.cookie(Access.COOKIE))));
        content.put("earlierRole", (known.role().covers(asked) ? asked : known.role()).word());
    }

    private void change(FormErrors form, String device, ObjectNode content) {
        acts.submit("device.change", device, form.typed("person"), content.put("device", device));
        door.endStreams().accept(device); // its rights are others now
    }
}
