package org.skeinday.platform.live;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.Acts;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Json;
import org.skeinday.platform.record.PlainText;

/** Takes in what devices kept in their outboxes: each tap is answered for itself. */
final class Taps {
    /** Taps in one request. */
    static final int MOST = 50;

    /** After one that must wait: trying the others would hold the request up, and bring them out of order. */
    private static final ObjectNode NOT_TRIED = Json.MAPPER
            .createObjectNode()
            .put("state", "later")
            .put("reason", "not tried yet; this is sent again by itself");

    private final Acts acts;
    private final TapRules rules;

    Taps(Acts acts, TapRules rules) {
        this.acts = acts;
        this.rules = rules;
    }

    void take(Context context) {
        answer(context, bodyOf(context), Access.callerOf(context), null);
    }

    /** Entries that a device could not send and saved to a file: taken in as that device's own. */
    void takeFile(Context context) {
        JsonNode body = bodyOf(context);
        String device = body.path("device").asText("");
        Caller caller = Caller.LAPTOP.equals(device)
                ? Caller.laptop()
                : rules.ofDevice()
                        .apply(device)
                        .orElseThrow(() -> new Refusal(
                                422,
                                "These entries are of a device that has never joined this record: nothing was taken."));
        Caller bringer = Access.callerOf(context);
        answer(context, body, caller, new Act.Brought(bringer.device(), bringer.person()));
    }

    private void answer(Context context, JsonNode body, Caller caller, Act.@Nullable Brought brought) {
        ObjectNode answer = Json.MAPPER.createObjectNode();
        ArrayNode answers = answer.putArray("answers");
        boolean later = false;
        for (JsonNode tap : tapsIn(body)) {
            ObjectNode one = later ? NOT_TRIED.deepCopy().put("id", idOf(tap)) : answerTo(tap, caller, brought);
            later |= one.path("state").asText().equals("later");
            answers.add(one);
        }
        context.contentType("application/json");
        context.result(answer.toString());
    }

    private static String idOf(JsonNode tap) {
        return tap.path("id").asText("");
    }

    private static JsonNode tapsIn(JsonNode body) {
        JsonNode taps = body.path("taps");
        if (!taps.isArray() || taps.size() > MOST) {
            throw Refusal.malformed("The body must hold \"taps\": a list of at most " + MOST + ".");
        }
        return taps;
    }

    private static JsonNode bodyOf(Context context) {
        try {
            return Json.MAPPER.readTree(context.body());
        } catch (JsonProcessingException e) {
            throw Refusal.malformed(whereWrong(e));
        }
    }

    /** Of what is too deep, too long or too large a number the reader names no place. */
    private static String whereWrong(JsonProcessingException wrong) {
        @Nullable JsonLocation place = wrong.getLocation();
        return place == null
                ? "The body must be JSON as a page sends it, but something in it is nested too deep, or a number or a name"
                        + " is too long."
                : "The body must be JSON, but it stops making sense at line " + place.getLineNr() + ", column "
                        + place.getColumnNr() + ".";
    }

    /** A tap that cannot be read is refused alone: the others in the batch are not held up by it. */
    private ObjectNode answerTo(JsonNode tap, Caller caller, Act.@Nullable Brought brought) {
        String id = idOf(tap);
        try {
            allow(textOf(tap, "kind"), caller);
            Act act = new Act(
                    id,
                    textOf(tap, "kind"),
                    caller.device(),
                    caller.person(),
                    Instant.parse(textOf(tap, "at")),
                    contentOf(tap),
                    brought);
            return said(id, acts.submit(act));
        } catch (IllegalArgumentException e) {
            return said(id, "refused").put("reason", e.getMessage());
        } catch (DateTimeParseException e) {
            return said(id, "refused")
                    .put("reason", "A tap's time must be an instant, but was '" + e.getParsedString() + "'");
        }
    }

    /** Forms have their own routes with their own checks (a PIN, a role); none may come in through here. */
    private void allow(String kind, Caller caller) {
        Role least = rules.kinds().get(kind);
        if (least == null || !caller.role().covers(least)) {
            throw new IllegalArgumentException("This device may not send '" + kind + "' as a tap");
        }
    }

    private static ObjectNode said(String id, Answer answer) {
        if (answer instanceof Answer.Saved saved) {
            return said(id, "saved").put("n", saved.n());
        }
        if (answer instanceof Answer.Refused refused) {
            return said(id, "refused").put("reason", refused.reason());
        }
        if (answer instanceof Answer.Unknown unknown) {
            return said(id, "refused").put("reason", unknown.reason());
        }
        if (answer instanceof Answer.Conflict conflict) {
            return said(id, "refused").put("reason", conflict.reason());
        }
        return said(id, "later").put("reason", waitFor(answer));
    }

    private static String waitFor(Answer answer) {
        return answer instanceof Answer.DiskFull full
                ? full.reason()
                : answer instanceof Answer.NotYet notYet ? notYet.reason() : "It still waits to be written.";
    }

    private static ObjectNode said(String id, String state) {
        return Json.MAPPER.createObjectNode().put("id", id).put("state", state);
    }

    private static String textOf(JsonNode tap, String name) {
        String text = tap.path(name).asText("");
        if (text.isEmpty()) {
            throw new IllegalArgumentException("A tap needs '" + name + "', but it was missing");
        }
        return text;
    }

    private static JsonNode contentOf(JsonNode tap) {
        JsonNode content = tap.path("content");
        if (!content.isObject()) {
            throw new IllegalArgumentException("A tap's content must be an object, but was " + content.getNodeType());
        }
        PlainText.whyNot(content).ifPresent(why -> {
            throw new IllegalArgumentException(why);
        });
        return content;
    }
}
