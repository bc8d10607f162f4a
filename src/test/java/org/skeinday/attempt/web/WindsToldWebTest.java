package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** An attempt of several winds: what is said of the one at hand, and what its record tells of all. */
@Timeout(60)
class WindsToldWebTest {
    private static final Pattern IN_FORCE =
            Pattern.compile("<dt>answered for by</dt><dd>[^<]*\\(for (\\d+) that were open\\)<");
    private static final Pattern WINDS =
            Pattern.compile("<dt>(wind \\d[^<]*), \\d\\d:\\d\\d:\\d\\d</dt><dd>([^<]+)</dd>");

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String attempt;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 131);
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor("A3")))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private void act(String id, String kind, ObjectNode content) throws Exception {
        var answer = laptop.tapAs(id, kind, content);
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    private void take(String from, String to) throws Exception {
        ObjectNode take = content().put("attempt", attempt).put("motor", motor(to));
        act(laptop.newId(), "attempt.take-motor", take.put("seenMotor", motor(from)));
    }

    private void wind(String tag, String ends) throws Exception {
        String id = laptop.newId();
        act(id, "wind.begin", content().put("attempt", attempt).put("motor", motor(tag)));
        ObjectNode phase = content().put("wind", id + "-0").put("phase", ends);
        act(laptop.newId(), "wind.phase", phase.put("elapsedMs", 1_000));
    }

    private void say(String address, String tag, String field, String value) throws Exception {
        var said = laptop.form(address, Map.of("attempt", attempt, "motor", motor(tag), field, value));
        assertEquals(200, said.statusCode(), said.body());
    }

    private String record() throws Exception {
        return laptop.get("/attempt/" + attempt).body();
    }

    /** For how many open items somebody answers, of each answer that a page says to hold. */
    private static List<Integer> answered(String page) {
        List<Integer> open = new ArrayList<>();
        Matcher line = IN_FORCE.matcher(page);
        while (line.find()) {
            open.add(Integer.valueOf(line.group(1)));
        }
        return open;
    }

    @Test
    void an_answer_is_said_as_long_as_it_covers_something_and_then_told_as_an_earlier_one() throws Exception {
        int all = answered(laptop.get("/now").body()).get(0);
        assertEquals(List.of(all), answered(record()));
        take("A3", "B2");
        String asked = laptop.get("/now").body();
        assertTrue(asked.contains("Winding waits for"), asked);
        int left = answered(asked).stream().mapToInt(Integer::intValue).sum();
        assertTrue(left < all, "what is asked again is answered for no more: " + left + " of " + all);
        CalledForTests.lookAgain(laptop, attempt);
        for (String page : List.of(laptop.get("/now").body(), record())) {
            assertEquals(1, answered(page).size(), page);
        }
        wind("B2", "stopped");
        List<Integer> wound = answered(laptop.get("/now").body());
        assertEquals(1, wound.size());
        assertEquals(wound, answered(record()));
        assertTrue(record().contains("(for " + all + " that were open), asked again or checked since"), record());
        assertFalse(laptop.get("/now").body().contains("asked again or checked since"), "Now says what holds");
    }

    @Test
    void the_record_tells_of_each_wind_its_motor_and_how_it_ended_in_the_order_of_time() throws Exception {
        wind("A3", "broke");
        say("/attempt/people-safe", "A3", "hands", "");
        say("/attempt/parted", "A3", "place", "knot");
        take("A3", "B2");
        CalledForTests.lookAgain(laptop, attempt);
        wind("B2", "stopped");
        say("/attempt/give-up", "B2", "reason", "the window is over");
        say("/attempt/run-back", "B2", "turns", "120");
        List<String> told = new ArrayList<>();
        Matcher line = WINDS.matcher(record());
        while (line.find()) {
            told.add(line.group(1) + ": " + line.group(2));
        }
        assertEquals(
                List.of(
                        "wind 1: motor A3, at Table by the door",
                        "wind 1, broke: motor A3, at the knot",
                        "wind 2: motor B2, at Table by the door",
                        "wind 2, run back: motor B2, with 120 crank turns on"),
                told);
    }
}
