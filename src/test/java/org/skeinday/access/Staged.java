package org.skeinday.access;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.Map;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;

/** An attempt brought as far as a form needs it: called, with a wind, broken, flown, official. */
enum Staged {
    CALLED,
    WINDING,
    BROKEN,
    LANDED,
    OFFICIAL;

    private static final long FLOWN_MS = 61_000;

    /** The first entry's. @return the attempt's id */
    String reach(Visitor laptop) throws IOException, InterruptedException {
        if (this == CALLED) {
            return CalledForTests.call(laptop);
        }
        String now = laptop.get("/now").body();
        String motor = CalledForTests.value(now, "(?s)name=\"motor\".*?<option value=\"([^\"]+)\"");
        String attempt = CalledForTests.callWithItsMotor(laptop);
        CalledForTests.letWind(laptop, attempt);
        move(laptop, attempt, "winding");
        String wind = laptop.newId();
        tap(laptop, wind, "wind.begin", about(attempt).put("motor", motor));
        if (this == BROKEN) {
            ok(laptop.form("/attempt/broke", Map.of("attempt", attempt)));
        }
        if (compareTo(LANDED) >= 0) {
            move(laptop, attempt, "holding");
            move(laptop, attempt, "released");
            tap(
                    laptop,
                    laptop.newId(),
                    "watch.landing",
                    about(attempt).put("slot", 1).put("ms", FLOWN_MS));
        }
        if (this == OFFICIAL) {
            ok(laptop.form("/attempt/close", Map.of("attempt", attempt, "why", "as read")));
        }
        return attempt;
    }

    private static ObjectNode about(String attempt) {
        return Json.MAPPER.createObjectNode().put("attempt", attempt);
    }

    private static void move(Visitor laptop, String attempt, String to) throws IOException, InterruptedException {
        ok(laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to)));
    }

    private static void tap(Visitor laptop, String id, String kind, ObjectNode content)
            throws IOException, InterruptedException {
        String answer = laptop.tapAs(id, kind, content).toString();
        if (!answer.contains("saved")) {
            throw new AssertionError(kind + " " + answer);
        }
    }

    private static void ok(HttpResponse<String> answer) {
        if (answer.statusCode() != 200) {
            throw new AssertionError(answer.statusCode() + " " + answer.body());
        }
    }
}
