package org.skeinday.platform.http;

import io.javalin.http.Context;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.HexFormat;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.Acts;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Json;

/** Acts that come from forms: the page made their id, so that a form sent twice counts once. */
public final class FormActs {
    private final Acts acts;
    private final Clock clock;
    private final SecureRandom random;

    public FormActs(Acts acts, Clock clock, SecureRandom random) {
        this.acts = acts;
        this.clock = clock;
        this.random = random;
    }

    /** A fresh id for the act that a form will send: 32 hexadecimal digits. */
    public String newId() {
        byte[] bytes = new byte[16];
        random.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    /**
     * Submits what the form's {@code act} field names.
     *
     * @throws IllegalArgumentException when that field is missing or no id
     */
    public Answer submit(Context context, String kind, Object content) {
        String id = context.formParam("act");
        Caller caller = Access.callerOf(context);
        var act = new Act(
                id == null ? "" : id,
                kind,
                caller.device(),
                caller.person(),
                clock.instant(),
                Json.MAPPER.valueToTree(content));
        return acts.submit(act);
    }

    /** Sets the status that fits the answer and gives its words; empty when the act was saved. */
    public static String words(Context context, Answer answer) {
        if (answer instanceof Answer.Refused refused) {
            context.status(422);
            return refused.reason();
        }
        if (answer instanceof Answer.Conflict conflict) {
            context.status(409);
            return conflict.reason();
        }
        if (answer instanceof Answer.NotYet notYet) {
            context.status(503);
            return notYet.reason();
        }
        if (answer instanceof Answer.DiskFull full) {
            context.status(507);
            return full.reason();
        }
        return "";
    }
}
