package org.skeinday.device.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.device.TokenHash;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.KeptCookie;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Json;

/** Joining: who uses a device and what it may do, asked again when it changes. */
final class JoinPages {
    private static final String OTHER_CODE = "This link is not from this day's join code: scan it again.";

    private final Page page;
    private final DevicePages.Door door;
    private final DeviceActs acts;

    JoinPages(Page page, DevicePages.Door door, DeviceActs acts) {
        this.page = page;
        this.door = door;
        this.acts = acts;
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
        routes.openPost("/join", this::join);
        routes.openPost("/join/who", this::who);
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
            return new JoinView(mayKnow ? door.crew().get() : List.of(), form, joined, List.of(), "", 0, null);
        }
        NetworkView network = door.network().view();
        String link = joinLink(network.address());
        List<String> links = network.all().stream().map(this::joinLink).toList();
        return new JoinView(door.crew().get(), form, false, links, Qr.path(link), Qr.side(link), network);
    }

    /** Without what stands behind the # nobody gets in. */
    private String joinLink(String address) {
        return address + "/join#" + door.joinCode().text();
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
        return door.joinCode().fits(form.typed("token"));
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
            acts.submit("device.join", "new", form.typed("person"), content);
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
        acts.submit("device.change", device, form.typed("person"), content.put("device", device));
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
            String problem = door.pins().problem(context.ip(), form.typed("pin"));
            return problem.isEmpty() ? found : found.with("pin", problem);
        }
        return found;
    }
}
