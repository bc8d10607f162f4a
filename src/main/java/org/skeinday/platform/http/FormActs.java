package org.skeinday.platform.http;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.Acts;
import org.skeinday.platform.record.Answer;
import org.skeinday.platform.record.Json;
import org.skeinday.platform.record.PlainText;

/**
 * Acts that come from forms. The page's script makes the id when the form is first sent and keeps it until an answer has
 * come, so that a form sent twice counts once.
 */
public final class FormActs {
    private final Acts acts;
    private final Clock clock;

    public FormActs(Acts acts, Clock clock) {
        this.acts = acts;
        this.clock = clock;
    }

    /**
     * Submits what the form's {@code act} field names.
     *
     * @throws Refusal 400 when that field is missing or no id
     */
    public Answer submit(Context context, String kind, Object content) {
        return submit(context, kind, content, acts::submit);
    }

    /** The same for a page that waits no longer than this, and asks {@link #told} from then on. */
    public Answer submit(Context context, String kind, Object content, Duration within) {
        return submit(context, kind, content, act -> acts.submit(act, within));
    }

    /** What became of the act with this number; empty when nothing of it is in the record, nor on its way there. */
    public Optional<Answer> told(String act) {
        return acts.told(act);
    }

    /** The same of the act that this form is. */
    public Optional<Answer> told(Context context) {
        return told(String.valueOf(context.formParam("act")));
    }

    private Answer submit(Context context, String kind, Object content, Function<Act, Answer> submitting) {
        String id = number(context);
        Caller caller = Access.callerOf(context);
        JsonNode told = Json.MAPPER.valueToTree(content);
        Act act = new Act(id, kind, caller.device(), caller.person(), clock.instant(), told);
        return PlainText.whyNot(told)
                .<Answer>map(why -> new Answer.Refused(why, Map.of()))
                .orElseGet(() -> submitting.apply(context.isMultipart() ? act : act.sentAs(request(context))));
    }

    /**
     * The number that the page's script has given this form.
     *
     * @throws Refusal 400 when there is none
     */
    public static String number(Context context) {
        String id = context.formParam("act");
        if (id == null || !id.matches("[0-9a-f]{32}")) {
            throw Refusal.malformed(
                    "This form came without the number of its entry. Load the page again and repeat it.");
        }
        return id;
    }

    /**
     * All that was typed and where it was sent; of files that came with it the content is all there is. Without the PIN: the
     * record keeps a sum of this, by which a million of them would be tried in a second.
     */
    public static String request(Context context) {
        Map<String, Object> fields = new TreeMap<>(context.formParamMap());
        fields.remove("act");
        fields.remove("pin");
        return context.path() + "\n" + Json.MAPPER.valueToTree(fields);
    }

    /**
     * Sets the status that fits the answer and gives the form back: as when it is shown first when the act was saved,
     * else what was typed, with the words beside their fields.
     *
     * @param otherwise the field beside which words stand that belong to none
     */
    public static FormErrors errors(Context context, Answer answer, String otherwise) {
        String words = words(context, answer);
        if (words.isEmpty()) {
            return FormErrors.none();
        }
        FormErrors typed = FormErrors.of(context);
        return answer instanceof Answer.Refused refused && !refused.fields().isEmpty()
                ? typed.withAll(refused.fields())
                : typed.with(otherwise, words);
    }

    /** Sets the status that fits the answer and gives its words; empty when the act was saved. */
    public static String words(Context context, Answer answer) {
        if (answer instanceof Answer.Refused refused) {
            context.status(422);
            return refused.reason();
        }
        if (answer instanceof Answer.Unknown unknown) {
            context.status(404);
            return unknown.reason();
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
