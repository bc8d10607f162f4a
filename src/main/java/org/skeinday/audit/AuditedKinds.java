package org.skeinday.audit;

import static org.skeinday.audit.AuditField.moment;
import static org.skeinday.audit.AuditField.text;
import static org.skeinday.audit.AuditField.time;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.skeinday.audit.AuditField.Is;
import org.skeinday.audit.AuditedKind.Does;
import org.skeinday.audit.AuditedKind.Thing;

/** The kinds of fact that stand in the audit. A test names every other kind, with why it does not. */
public final class AuditedKinds {
    private static final List<AuditField> EVENT = List.of(
            text("name", "name"),
            text("kind", "kind of day"),
            text("day", "day"),
            text("hall", "hall"),
            text("attempts", "attempts"),
            text("windowMinutes", "window, min"),
            text("score", "score"),
            text("bestOf", "best of"),
            text("timekeepers", "timekeepers"),
            text("take", "of several watches"),
            text("ifTwo", "of two watches"),
            text("roundToMs", "step, ms"),
            text("rounding", "rounding"),
            text("roundWatchesFirst", "each watch is rounded"),
            time("minimumMs", "minimum"));
    private static final List<AuditField> CONDITIONS = List.of(
            text("devices", "devices"),
            text("outsideHelp", "outside help"),
            text("motorLimitTyped", "motor limit"),
            text("modelLeastTyped", "model at least"),
            text("declaredMotors", "declared motors"),
            text("reinspection", "inspected again"),
            text("logFlights", "flights in the log"),
            text("sections", "sections"),
            text("protestMinutes", "time to protest, min"),
            time("spreadMs", "spread limit"),
            text("ifOne", "if one watch is left"),
            moment("handInAtMs", "hand in by"));
    private static final List<AuditField> FLIGHT_RULES = List.of(
            text("repeatsPerFlight", "repeats of a flight"),
            text("repeatsInAll", "repeats in all"),
            text("ifShort", "a second short flight"),
            text("ifCaught", "a model that is caught"),
            time("heldWatchedMs", "held, watched for"),
            time("heldDeductMs", "held, deducted"),
            text("startAgain", "may start again"),
            text("collision", "a collision"),
            time("collisionMs", "time to choose"),
            text("ifSilent", "without a choice"),
            text("ties", "ties"),
            text("dropBest", "best dropped"),
            text("dropWorst", "worst dropped"),
            text("meanRanks", "mean ranks"),
            time("lastCallMs", "last call"),
            text("inside", "inside the window"));
    private static final List<AuditField> WINDOW = List.of(
            new AuditField("entryId", "entry", Is.ENTRY), moment("opensAtMs", "opens"), moment("closesAtMs", "closes"));
    private static final List<AuditField> ENTRY = List.of(
            text("name", "name"),
            text("team", "team"),
            text("division", "division"),
            text("own", "of our own team"),
            text("callOrder", "call order"));
    private static final List<AuditField> DEVICE =
            List.of(new AuditField("person", "used by", Is.PERSON), text("role", "role"), text("asked", "asks to be"));
    private static final List<AuditField> RESULT = List.of(
            time("officialMs", "official time"),
            text("how", "how it came about"),
            new AuditField("flownAgain", "flown again", Is.FLAG));

    /** By kind of fact. */
    public static final Map<String, AuditedKind> ALL = Stream.of(
                    set("event.added", AuditTopic.RULES, "event added", Thing.EVENT, "id", EVENT),
                    set("event.changed", AuditTopic.RULES, "event changed", Thing.EVENT, "id", EVENT),
                    end("event.removed", AuditTopic.RULES, "event removed", Thing.EVENT, "id"),
                    say("event.at-hand", AuditTopic.RULES, "all pages are about it", Thing.EVENT, "eventId"),
                    set("terms.set", AuditTopic.RULES, "conditions set", Thing.CONDITIONS, "eventId", CONDITIONS),
                    set("rules.set", AuditTopic.RULES, "flight rules set", Thing.FLIGHT_RULES, "eventId", FLIGHT_RULES),
                    say(
                            "rules.changed",
                            AuditTopic.RULES,
                            "rules changed after the first official flight",
                            Thing.EVENT,
                            "eventId",
                            text("moved", "moved")),
                    set("window.added", AuditTopic.WINDOWS, "window added", Thing.WINDOW, "id", WINDOW),
                    set("window.changed", AuditTopic.WINDOWS, "window moved", Thing.WINDOW, "id", WINDOW),
                    say("window.moved", AuditTopic.WINDOWS, "moved with a reason", Thing.EVENT, "eventId"),
                    end("window.removed", AuditTopic.WINDOWS, "window removed", Thing.WINDOW, "id"),
                    say("hall.stopped", AuditTopic.WINDOWS, "hall stopped", Thing.HALL, "id", text("words", "words")),
                    say("hall.resumed", AuditTopic.WINDOWS, "hall goes on, windows shifted", Thing.HALL, "id"),
                    set("entry.added", AuditTopic.ENTRIES, "entry added", Thing.ENTRY, "id", ENTRY),
                    set("entry.changed", AuditTopic.ENTRIES, "entry changed", Thing.ENTRY, "id", ENTRY),
                    end("entry.removed", AuditTopic.ENTRIES, "entry removed", Thing.ENTRY, "id"),
                    add("entry.model", "models", "modelId", Is.MODEL),
                    add("entry.motor", "motors", "motorId", Is.MOTOR),
                    add("entry.task", "tasks", "task", Is.TEXT),
                    set("device.joined", AuditTopic.RIGHTS, "device joined", Thing.DEVICE, "device", DEVICE),
                    set("device.changed", AuditTopic.RIGHTS, "device changed", Thing.DEVICE, "device", DEVICE),
                    say(
                            "device.answered",
                            AuditTopic.RIGHTS,
                            "the coach answered",
                            Thing.DEVICE,
                            "device",
                            text("role", "may be")),
                    end("device.ended", AuditTopic.RIGHTS, "device ended", Thing.DEVICE, "device"),
                    set(
                            "laptop.lent",
                            AuditTopic.RIGHTS,
                            "laptop lent or taken back",
                            Thing.LAPTOP,
                            "laptop",
                            List.of(text("lent", "lent"))),
                    set(
                            "crew.added",
                            AuditTopic.RIGHTS,
                            "crew member set",
                            Thing.PERSON,
                            "personId",
                            List.of(
                                    text("roles", "cleared for"),
                                    text("cleanWinds", "clean winds"),
                                    text("team", "team"))),
                    end("crew.removed", AuditTopic.RIGHTS, "crew member removed", Thing.PERSON, "personId"),
                    say("person.erased", AuditTopic.RIGHTS, "name erased", Thing.PERSON, "personId"),
                    set("attempt.imported", AuditTopic.RESULTS, "came in from a file", Thing.ATTEMPT, "id", RESULT),
                    result("attempt.closed", "official time accepted"),
                    result("attempt.time-decided", "time decided"),
                    result("attempt.reopened", "opened again"),
                    result("attempt.given-up", "given up"),
                    result("attempt.taken-back", "release or landing undone"),
                    set(
                            "attempt.noted",
                            AuditTopic.RESULTS,
                            "announced time noted",
                            Thing.ANNOUNCED,
                            "attemptId",
                            List.of(time("announcedMs", "announced"))),
                    set(
                            "attempt.collided",
                            AuditTopic.RESULTS,
                            "collision",
                            Thing.COLLISION,
                            "attemptId",
                            List.of(text("choice", "choice"))),
                    end("attempt.no-collision", AuditTopic.RESULTS, "no collision", Thing.COLLISION, "id"),
                    say(
                            "watch.judged",
                            AuditTopic.RESULTS,
                            "watch judged",
                            Thing.ATTEMPT,
                            "attemptId",
                            text("slot", "watch"),
                            text("verdict", "verdict")),
                    say(
                            "attempt.motor-corrected",
                            AuditTopic.RESULTS,
                            "another motor was flown",
                            Thing.ATTEMPT,
                            "attemptId",
                            new AuditField("motorId", "motor", Is.MOTOR)),
                    set(
                            "attempt.protested",
                            AuditTopic.RESULTS,
                            "protest",
                            Thing.PROTEST,
                            "id",
                            List.of(text("words", "protest"), text("settled", "settled"))),
                    say(
                            "result.final",
                            AuditTopic.SIGNATURES,
                            "result made final",
                            Thing.EVENT,
                            "eventId",
                            text("version", "version")),
                    say(
                            "attempt.signed",
                            AuditTopic.SIGNATURES,
                            "signed",
                            Thing.ATTEMPT,
                            "attemptId",
                            text("signedAs", "as")))
            .collect(Collectors.toUnmodifiableMap(AuditedKind::kind, Function.identity()));

    private AuditedKinds() {}

    private static AuditedKind result(String kind, String words) {
        return set(kind, AuditTopic.RESULTS, words, Thing.ATTEMPT, "attemptId", RESULT);
    }

    private static AuditedKind set(
            String kind, AuditTopic topic, String words, Thing thing, String subject, List<AuditField> fields) {
        return new AuditedKind(kind, topic, words, thing, subject, Does.SETS, fields);
    }

    private static AuditedKind say(
            String kind, AuditTopic topic, String words, Thing thing, String subject, AuditField... fields) {
        return new AuditedKind(kind, topic, words, thing, subject, Does.SAYS, List.of(fields));
    }

    private static AuditedKind end(String kind, AuditTopic topic, String words, Thing thing, String subject) {
        return new AuditedKind(kind, topic, words, thing, subject, Does.ENDS, List.of());
    }

    private static AuditedKind add(String kind, String label, String field, Is is) {
        return new AuditedKind(
                kind,
                AuditTopic.ENTRIES,
                "entry changed",
                Thing.ENTRY,
                "entryId",
                Does.ADDS,
                List.of(new AuditField(field, label, is)));
    }
}
