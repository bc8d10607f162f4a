package org.skeinday.device.web;

import io.javalin.http.Context;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.device.Device;
import org.skeinday.device.TokenHash;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Role;

/**
 * What a device may become. The link or the typed code makes a viewer or a helper; a timekeeper and a captain need the code
 * of the day too, or the coach's yes, and are helpers until it comes, again for each other person who uses the device; a coach needs the PIN.
 */
final class Joining {
    private static final String ENDED =
            "This device was ended. It joins again with a new code only: the coach makes one"
                    + " on the laptop's page Devices.";

    private final DevicePages.Door door;
    private final CodeGate codes;
    private final JoinRate rate;

    /**
     * What came of a form.
     *
     * @param form with what is wrong beside its field
     * @param mayKnow whether the crew's names may be shown
     * @param role that the device has from now on
     * @param asked role that it has to ask the coach for; null for none
     */
    record Outcome(
            FormErrors form,
            boolean mayKnow,
            String role,
            @Nullable String asked) {}

    Joining(DevicePages.Door door, CodeGate codes, JoinRate rate) {
        this.door = door;
        this.codes = codes;
        this.rate = rate;
    }

    /** Whether what was typed or scanned opens the door at all; a wrong try counts. */
    CodeGate.Found atDoor(Context context, FormErrors form) {
        CodeGate.Found found =
                codes.ask(context.ip(), Access.joined(context).isPresent(), form.typed("token"), form.typed("code"));
        boolean isOut = found.opens() != CodeGate.Opens.NOTHING && wasEndedUnderThisLink(context);
        return isOut ? new CodeGate.Found(CodeGate.Opens.NOTHING, ENDED) : found;
    }

    Outcome of(Context context, FormErrors typed) {
        Optional<Device> known = device(context);
        boolean asksDoor = known.isEmpty() || !typed.typed("code").isBlank();
        CodeGate.Found found = asksDoor ? atDoor(context, typed) : new CodeGate.Found(CodeGate.Opens.NOTHING, "");
        FormErrors form = found.problem().isEmpty() ? typed : typed.with("code", found.problem());
        form = known.isPresent() ? form : unlessTooMany(context, form, found.opens());
        form = checked(context, form);
        String person = form.typed("person");
        Role now = known.map(device -> withoutYes(device, person)).orElse(Role.HELPER);
        String wanted = form.typed("role");
        boolean asks = form.isEmpty() && needsYes(Role.ofWord(wanted), person, found.opens(), known);
        return new Outcome(
                form,
                known.isPresent() || found.opens() != CodeGate.Opens.NOTHING,
                asks ? now.word() : wanted,
                asks ? wanted : null);
    }

    /** A repeat of a joining makes no other device. */
    private FormErrors unlessTooMany(Context context, FormErrors form, CodeGate.Opens opens) {
        String problem =
                form.isEmpty() && door.sessions().repeated(form.typed("act")).isEmpty()
                        ? rate.problem(context.ip(), opens)
                        : "";
        return problem.isEmpty() ? form : form.with("code", problem);
    }

    /** A device that was none before has joined. */
    void count(Context context) {
        rate.count(context.ip());
    }

    /** A yes was to the person whom the coach had before him: it goes with the device to nobody else. */
    private static boolean needsYes(Role wanted, String person, CodeGate.Opens opens, Optional<Device> known) {
        boolean isThere = known.filter(device -> withoutYes(device, person).covers(wanted))
                .isPresent();
        boolean saidYes = known.filter(device -> device.person().equals(person))
                .map(Device::allowed)
                .filter(allowed -> !allowed.isEmpty() && Role.ofWord(allowed).covers(wanted))
                .isPresent();
        return isSpecial(wanted) && opens != CodeGate.Opens.WATCHES && !isThere && !saidYes;
    }

    /** What the device is for this person without anybody's yes. */
    private static Role withoutYes(Device device, String person) {
        Role now = Role.ofWord(device.role());
        return isSpecial(now) && !device.person().equals(person) ? Role.HELPER : now;
    }

    private static boolean isSpecial(Role role) {
        return role == Role.TIMEKEEPER || role == Role.CAPTAIN;
    }

    /** The device that asks, when it has joined. */
    Optional<Device> device(Context context) {
        return Access.joined(context)
                .map(Caller::device)
                .flatMap(id -> door.devices().get().stream()
                        .filter(device -> device.id().equals(id))
                        .findFirst());
    }

    private boolean wasEndedUnderThisLink(Context context) {
        @Nullable String token = context.cookie(Access.COOKIE);
        return token != null
                && Access.joined(context).isEmpty()
                && door.sessions()
                        .endedLinkHash(token)
                        .filter(TokenHash.of(door.codes().link().text())::equals)
                        .isPresent();
    }

    private FormErrors checked(Context context, FormErrors form) {
        FormErrors found = form;
        String person = form.typed("person");
        if (!person.isEmpty() && door.crew().get().stream().noneMatch(p -> p.id().equals(person))) {
            found = found.with("person", "Choose a name of the list, or nobody in particular.");
        }
        String role = form.typed("role");
        if (Arrays.stream(Role.values())
                .noneMatch(one -> one != Role.SPECTATOR && one.word().equals(role))) {
            return found.with("role", "Choose what this device is for.");
        }
        if (found.isEmpty() && role.equals(Role.COACH.word())) {
            String problem =
                    door.pins().problem(context.ip(), Access.joined(context).isPresent(), form.typed("pin"));
            return problem.isEmpty() ? found : found.with("pin", problem);
        }
        return found;
    }
}
