package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Map;
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

/** The Bench as devices use it: taps that the state allows, and those that it does not. */
@Timeout(60)
class BenchWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String motor;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 31);
        motor = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static ObjectNode step(String motor, String deed) {
        return Json.MAPPER.createObjectNode().put("motor", motor).put("deed", deed);
    }

    private void done(String... deeds) throws Exception {
        for (String deed : deeds) {
            JsonNode answer = laptop.tap("bench.step", step(motor, deed));
            assertEquals("saved", answer.path("state").asText(), deed + " " + answer);
        }
    }

    private String page() throws Exception {
        return laptop.get("/bench/motor/" + motor).body();
    }

    /** The state as the motor's page says it. */
    private String state() throws Exception {
        return CalledForTests.value(page(), "<span class=\"state [a-z]*\">([^<]*)<");
    }

    @Test
    void a_motor_goes_through_its_evening_tap_by_tap() throws Exception {
        assertEquals("weighed", state());
        done("lubricate", "condition", "rest", "ready-now");
        assertEquals("ready", state());
        String page = page();
        assertTrue(page.contains("conditioned after 0:0") && page.contains("ready after 0:0"), page);
        assertTrue(laptop.get("/bench").body().contains("Ready to be wound."));
    }

    @Test
    void what_the_state_does_not_allow_is_refused_in_words() throws Exception {
        JsonNode answer = laptop.tap("bench.step", step(motor, "wind"));
        assertEquals("refused", answer.path("state").asText());
        assertEquals(
                "A3 is weighed: lubricate it first, dry rubber breaks",
                answer.path("reason").asText());
        assertEquals("weighed", state());
    }

    @Test
    void the_same_done_by_two_counts_once_and_something_else_is_looked_at() throws Exception {
        laptop.tap("bench.step", step(motor, "lubricate").put("seen", ""));
        String one = page();
        assertEquals(
                "saved",
                laptop.tap("bench.step", step(motor, "lubricate").put("seen", ""))
                        .path("state")
                        .asText());
        assertEquals(one.split("<dt>", -1).length, page().split("<dt>", -1).length, "no second step");
        JsonNode other = laptop.tap("bench.step", step(motor, "fall").put("seen", ""));
        assertTrue(other.path("reason").asText().contains("Somebody was quicker"), other.toString());
    }

    @Test
    void a_required_wait_cut_short_needs_a_reason_and_an_advised_one_only_a_tap() throws Exception {
        Map<String, String> wait =
                Map.of("name", "rest", "least", "5", "wished", "10", "longest", "", "required", "yes");
        assertEquals(200, laptop.form("/bench/waits", wait).statusCode());
        done("lubricate", "condition", "rest");
        JsonNode early = laptop.tap("bench.step", step(motor, "ready-now"));
        assertTrue(early.path("reason").asText().contains("say why it goes on now"), early.toString());
        assertTrue(page().contains("why go on now?"));
        laptop.tap("bench.step", step(motor, "ready-now").put("reason", "the window closes"));
        assertEquals("ready", state());
        assertTrue(page().contains("(the window closes)"));
    }

    @Test
    void a_bad_wait_says_what_would_be_right() throws Exception {
        var answer = laptop.form(
                "/bench/waits", Map.of("name", "soak", "least", "5", "wished", "2", "longest", "", "required", ""));
        assertEquals(422, answer.statusCode());
        assertTrue(answer.body().contains("not below the least"), answer.body());
        var words = laptop.form(
                "/bench/waits", Map.of("name", "soak", "least", "soon", "wished", "2", "longest", "", "required", ""));
        assertTrue(words.body().contains("for example 5 or 2:30"), words.body());
    }

    @Test
    void the_last_step_can_be_taken_back_until_something_builds_on_it() throws Exception {
        done("lubricate");
        String step = CalledForTests.value(page(), "data-tap=\"bench.undo\" data-step=\"([^\"]+)\"");
        done("condition");
        ObjectNode undo = Json.MAPPER.createObjectNode().put("step", step);
        assertEquals("refused", laptop.tap("bench.undo", undo).path("state").asText());
        String last = CalledForTests.value(page(), "data-tap=\"bench.undo\" data-step=\"([^\"]+)\"");
        assertEquals(
                "saved",
                laptop.tap("bench.undo", undo.deepCopy().put("step", last))
                        .path("state")
                        .asText());
        assertEquals("lubricated", state());
    }

    @Test
    void a_gritty_motor_is_neither_called_nor_offered_nor_wound() throws Exception {
        done("fall");
        String now = laptop.get("/now").body();
        assertFalse(now.contains("A3 ·"), "not offered: " + now);
        JsonNode wound = laptop.tap("bench.step", step(motor, "wind"));
        assertTrue(wound.path("reason").asText().contains("wash it with mild soap"), wound.toString());
        String entry = CalledForTests.value(now, "name=\"entry\" value=\"([^\"]+)\"");
        var called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor));
        assertEquals(422, called.statusCode());
        done("wash", "lubricate");
        assertEquals("lubricated", state());
    }

    @Test
    void a_motor_goes_with_its_attempt() throws Exception {
        done("lubricate");
        String now = laptop.get("/now").body();
        String entry = CalledForTests.value(now, "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        String attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        assertTrue(laptop.get("/bench").body().contains("in Curlew, attempt 1"), called);
        CalledForTests.letWind(laptop, attempt);
        for (String to : new String[] {"winding", "holding"}) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to, "seen", ""));
        }
        assertEquals("wound", state());
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "a ring slipped", "seen", ""));
        assertEquals("wound", state());
        done("unwind");
        assertEquals("run back", state());
    }

    @Test
    void handed_in_means_hands_off_until_it_is_given_back() throws Exception {
        ObjectNode in = Json.MAPPER.createObjectNode().put("motor", motor).put("in", true);
        assertEquals("saved", laptop.tap("bench.impound", in).path("state").asText());
        JsonNode no = laptop.tap("bench.step", step(motor, "lubricate"));
        assertTrue(no.path("reason").asText().contains("must be given back"), no.toString());
        laptop.tap("bench.impound", in.deepCopy().put("in", false));
        done("lubricate");
    }

    @Test
    void a_break_keeps_turns_and_torque_and_refuses_what_is_none() throws Exception {
        done("lubricate");
        JsonNode bad = laptop.tap("bench.step", step(motor, "break").put("crankTurns", "two"));
        assertTrue(bad.path("reason").asText().contains("whole number"), bad.toString());
        laptop.tap("bench.step", step(motor, "break").put("crankTurns", "251").put("torque", "0.62"));
        String page = page();
        assertTrue(page.contains("broken, at 2510 motor turns, 0.62"), page);
    }

    @Test
    void put_first_stands_before_what_attempts_need() throws Exception {
        String last = new FilledForms(laptop).row("motors", "C5").replaceFirst(".*/", "");
        laptop.tap(
                "bench.place", Json.MAPPER.createObjectNode().put("motor", last).put("first", true));
        String bench = laptop.get("/bench").body();
        assertTrue(bench.indexOf("/bench/motor/" + last) < bench.indexOf("/bench/motor/" + motor));
    }

    @Test
    void a_viewer_has_no_bench_and_a_helper_has() throws Exception {
        assertEquals(403, Demo.joined(app, "viewer", "", 33).get("/bench").statusCode());
        Visitor helper = Demo.joined(app, "helper", "", 34);
        assertEquals(200, helper.get("/bench").statusCode());
        assertEquals(
                "saved",
                helper.tap("bench.step", step(motor, "lubricate")).path("state").asText());
        JsonNode jump =
                helper.tap("clock.jumped", Json.MAPPER.createObjectNode().put("byMs", 5000));
        assertEquals("refused", jump.path("state").asText(), "only the laptop sees its own clock");
    }
}
