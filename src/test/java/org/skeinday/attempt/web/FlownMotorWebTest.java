package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** The motor of an attempt: corrected with a reason after another was flown, and missed in words where there is none. */
@Timeout(120)
class FlownMotorWebTest {
    @TempDir
    Path root;

    private static String said(Visitor who, int status, String address, String... fields) throws Exception {
        Map<String, String> form = new HashMap<>();
        for (int i = 0; i < fields.length; i += 2) {
            form.put(fields[i], fields[i + 1]);
        }
        var answer = who.form(address, form);
        assertEquals(status, answer.statusCode(), address + " " + answer.body());
        return answer.body();
    }

    private static void says(String words, String page) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    private static void saysNot(String words, String page) {
        assertFalse(page.contains(words), words + " in " + page);
    }

    private static String page(Visitor who, String motor) throws Exception {
        return who.get("/bench/motor/" + motor).body();
    }

    private static String state(Visitor who, String motor) throws Exception {
        return value(page(who, motor), "class=\"state[^\"]*\">([^<]+)<");
    }

    private static String id(Visitor who, String kind, String name) throws Exception {
        return new FilledForms(who).row(kind, name).replaceFirst(".*/", "");
    }

    @Test
    void wind_use_and_state_go_over_to_the_motor_that_was_flown_and_the_reason_stays() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            var laptop = new Visitor(app.port(), "", 971);
            String wrong = id(laptop, "motors", "A3");
            String right = id(laptop, "motors", "C1");
            String wrongWas = state(laptop, wrong);
            String usesWrong = uses(page(laptop, wrong));
            String usesRight = uses(page(laptop, right));
            String act = laptop.newId();
            String attempt = act + "-0";
            said(laptop, 200, "/attempt/call", "act", act, "entry", id(laptop, "entries", "Curlew"), "motor", wrong);
            said(laptop, 422, "/attempt/" + attempt + "/motor", "flown-motor", right, "seen", wrong, "flown-why", "x");
            CalledForTests.letWind(laptop, attempt);
            String wind = laptop.newId();
            laptop.tapAs(
                    wind,
                    "wind.begin",
                    Json.MAPPER.createObjectNode().put("attempt", attempt).put("motor", wrong));
            laptop.tap(
                    "wind.phase",
                    Json.MAPPER
                            .createObjectNode()
                            .put("wind", wind + "-0")
                            .put("phase", "stopped")
                            .put("elapsedMs", 60_000));
            said(laptop, 200, "/attempt/move", "attempt", attempt, "to", "released");
            said(laptop, 200, "/attempt/move", "attempt", attempt, "to", "landed");
            said(laptop, 200, "/attempt/type-time", "attempt", attempt, "typed-slot", "1", "typed", "0:01");
            said(laptop, 200, "/attempt/close", "attempt", attempt, "why", "one watch only");
            said(laptop, 200, "/winding/count", "wind", wind + "-0", "atFull", "100", "stop", "150", "backOff", "2");
            assertEquals("flown", state(laptop, wrong));

            String record = "/attempt/" + attempt;
            says("Another motor was flown", laptop.get(record).body());
            String post = record + "/motor";
            says("Say why", said(laptop, 422, post, "flown-motor", right, "seen", wrong, "flown-why", ""));
            says("Look again", said(laptop, 409, post, "flown-motor", right, "seen", "other", "flown-why", "tag"));
            assertEquals("flown", state(laptop, wrong), "nothing was changed");
            says(
                    "C1 in place of A3",
                    said(laptop, 200, post, "flown-motor", right, "seen", wrong, "flown-why", "seen on its tag"));
            corrected(laptop, record, wrong, right, wrongWas, usesWrong, usesRight);
            app.close();
            try (Stream<Path> files = Files.list(root.resolve("day"))) {
                for (Path file :
                        files.filter(f -> f.toString().contains(".mv.db")).toList()) {
                    Files.delete(file);
                }
            }
        }
        try (App app = Demo.startEmpty(root.resolve("day"))) {
            var laptop = new Visitor(app.port(), "", 972);
            says("seen on its tag", journal());
            assertEquals("flown", state(laptop, id(laptop, "motors", "C1")));
        }
    }

    private String journal() throws Exception {
        return Files.readString(root.resolve("day/journal.jsonl"));
    }

    private static void corrected(
            Visitor laptop,
            String record,
            String wrong,
            String right,
            String wrongWas,
            String usesWrong,
            String usesRight)
            throws Exception {
        assertEquals(wrongWas, state(laptop, wrong));
        assertEquals("flown", state(laptop, right));
        assertEquals(usesWrong, uses(page(laptop, wrong)));
        assertFalse(usesRight.equals(uses(page(laptop, right))), "one use more");
        says("seen on its tag", laptop.get(record).body());
    }

    private static String uses(String page) {
        return value(page, "(not used yet|used \\d+ times?)");
    }

    @Test
    void where_no_motor_can_be_flown_the_cards_say_why_and_where_to_name_one() throws Exception {
        try (App app = Demo.start(root.resolve("none"))) {
            var laptop = new Visitor(app.port(), "", 973);
            for (String tag :
                    new String[] {"A1", "A2", "A3", "A4", "B1", "B2", "B3", "B4", "B5", "C1", "C2", "C3", "C4", "C5"}) {
                if (laptop.get("/bench").body().contains(">" + tag + "<")) {
                    laptop.tap(
                            "bench.step",
                            Json.MAPPER
                                    .createObjectNode()
                                    .put("motor", id(laptop, "motors", tag))
                                    .put("deed", "lose"));
                }
            }
            says("none can be flown now: ", laptop.get("/now").body());
            String act = laptop.newId();
            said(
                    laptop,
                    200,
                    "/attempt/call",
                    "act",
                    act,
                    "entry",
                    id(laptop, "entries", "Curlew"),
                    "number",
                    "1",
                    "assigned",
                    "yes");
            String called = laptop.get("/now?attempt=" + act + "-0").body();
            says("none can be flown now: ", called);
            says(" is lost", called);
            says("it is named here, under Another motor", called);
            saysNot("none is named yet", called);
        }
    }
}
