package org.skeinday.device.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.time.Clock;
import java.util.function.Supplier;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.Acts;
import org.skeinday.platform.record.Answer;

/** What is said of devices and goes into the record, or is refused as a page tells it. */
final class DeviceActs {
    private final Acts acts;
    private final Supplier<String> newId;
    private final Clock clock;

    /** @param newId 32 fresh random hexadecimal digits each time */
    DeviceActs(Acts acts, Supplier<String> newId, Clock clock) {
        this.acts = acts;
        this.newId = newId;
        this.clock = clock;
    }

    /**
     * Comes back once it is saved.
     *
     * @param device that says so
     * @param person who says so, empty for nobody in particular
     */
    void submit(String kind, String device, String person, ObjectNode content) {
        submit(new Act(newId.get(), kind, device, person, clock.instant(), content));
    }

    /** The same under the number that the form came with, so that pressing twice counts once. */
    void submit(Context form, String kind, String device, String person, ObjectNode content) {
        Act act = new Act(FormActs.number(form), kind, device, person, clock.instant(), content);
        submit(act.sentAs(FormActs.request(form)));
    }

    private void submit(Act act) {
        Answer answer = acts.submit(act);
        if (answer instanceof Answer.Unknown unknown) {
            throw Refusal.notFound(unknown.reason());
        }
        if (answer instanceof Answer.Refused refused) {
            throw new Refusal(409, refused.reason());
        }
        if (!(answer instanceof Answer.Saved)) {
            throw new Refusal(503, "The record has not answered yet. Press again: it counts once.");
        }
    }
}
