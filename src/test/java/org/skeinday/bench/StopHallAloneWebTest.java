package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.browser.SteppedClock;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** When the hall is stopped, motors that no attempt has in hand are run back too: cranked, wound for practice, wound on the bench. */
@Timeout(120)
class StopHallAloneWebTest {
    private static final String RUN_BACK = "Run it back: how many turns are on?";

    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private Visitor phone;

    @BeforeEach
    void start() throws Exception {
        app = Demo.startEmpty(Demo.into(root.resolve("day")), clock);
        laptop = new Visitor(app.port(), "", 83);
        phone = Demo.joined(app, "helper", "", 84);
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

    private static void saved(JsonNode answer) {
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    private String begin(String motor) throws Exception {
        String id = phone.newId();
        saved(phone.tapAs(id, "wind.alone", content().put("motor", motor).put("stop", "count")));
        return id + "-0";
    }

    private void stopHall() throws Exception {
        assertEquals(
                200,
                laptop.form("/hall/stop", Map.of("stop-reason", "fire", "stop-words", ""))
                        .statusCode());
    }

    private HttpResponse<String> runBack(String motor, String turns) throws Exception {
        return phone.form("/motor/run-back", Map.of("motor", motor, "turns", turns));
    }

    private String first() throws Exception {
        return laptop.get("/bench").body();
    }

    @Test
    void a_motor_under_the_crank_and_one_that_hangs_wound_are_asked_for_on_every_device() throws Exception {
        String b1 = motor("B1");
        String b4 = motor("B4");
        begin(b1);
        String wound = begin(b4);
        saved(phone.tap(
                "wind.phase",
                content().put("wind", wound).put("phase", "stopped").put("elapsedMs", 30_000)));
        assertFalse(first().contains(RUN_BACK), "nothing is asked while the hall goes on");
        stopHall();
        for (Visitor who : new Visitor[] {laptop, phone}) {
            String page = who.get("/timing").body() + who.get("/").body();
            assertTrue(page.contains("Motor B1, without an attempt") && page.contains(RUN_BACK), page);
            assertTrue(page.contains("Motor B4, without an attempt"), page);
            assertTrue(page.contains("Landed motors too: off, and counted back."), page);
        }
        HttpResponse<String> none = runBack(b1, "");
        assertEquals(422, none.statusCode());
        assertTrue(none.body().contains("Say how many crank turns were on; 0 where none were"), none.body());
        assertTrue(runBack(b1, "many").body().contains("a number from 0 to 10000"));
        assertEquals(200, runBack(b1, "40").statusCode());
        assertFalse(first().contains("Motor B1, without"), "answered");
        assertTrue(first().contains("Motor B4, without"), "the other is not");
        assertEquals(200, runBack(b4, "200").statusCode());
        assertFalse(first().contains(RUN_BACK));
        assertEquals(409, runBack(b4, "200").statusCode(), "nothing is on it any more");
        assertTrue(laptop.get("/bench/motor/" + b4).body().contains("run back"), "it was used");
        assertFalse(
                laptop.get("/bench/motor/" + b1).body().contains("class=\"state now\">run back"),
                "few turns are no use");
        assertTrue(
                laptop.get("/winding/motor/" + b1).body().contains("40 crank turns"), "the wind is over and counted");
    }

    @Test
    void what_the_bench_alone_says_is_wound_is_asked_for_and_the_bench_may_answer() throws Exception {
        String b4 = motor("B4");
        saved(phone.tap("bench.step", content().put("motor", b4).put("deed", "lubricate")));
        ObjectNode wind = content().put("motor", b4).put("deed", "wind").put("reason", "practice");
        stopHall();
        JsonNode answer = phone.tap("bench.step", wind);
        saved(answer);
        assertTrue(first().contains("Motor B4, without an attempt"), first());
        saved(phone.tap("bench.step", content().put("motor", b4).put("deed", "unwind")));
        assertFalse(first().contains(RUN_BACK), "the bench said so");
    }

    @Test
    void what_is_asked_for_can_be_answered_however_long_the_hall_stands_still() throws Exception {
        String b1 = motor("B1");
        begin(b1);
        stopHall();
        clock.stepBy(Duration.ofMinutes(61));
        assertTrue(first().contains("Motor B1, without an attempt"), first());
        HttpResponse<String> answer = runBack(b1, "40");
        assertEquals(200, answer.statusCode(), answer.body());
        assertFalse(first().contains(RUN_BACK), "answered");
    }

    @Test
    void a_cranked_motor_that_was_run_back_before_is_answered_on_the_spot_and_no_turns_are_made_up() throws Exception {
        String b1 = motor("B1");
        begin(b1);
        stopHall();
        assertTrue(first().contains("<button>It was run back before</button>"), first());
        String stage = stage(b1);
        Map<String, String> before = Map.of("motor", b1, "turns", "", "before", "yes");
        HttpResponse<String> answer = phone.form("/motor/run-back", before);
        assertEquals(200, answer.statusCode(), answer.body());
        assertFalse(first().contains(RUN_BACK), "answered");
        assertEquals(stage, stage(b1), "nothing is known of its use");
        assertFalse(laptop.get("/winding/motor/" + b1).body().contains("0 crank turns"), "nobody counted");
    }

    private String stage(String motor) throws Exception {
        return org.skeinday.fault.CalledForTests.value(
                laptop.get("/bench/motor/" + motor).body(), "class=\"state[^\"]*\">([^<]+)<");
    }

    @Test
    void of_what_the_bench_has_as_wound_the_bench_says_that_it_was_run_back() throws Exception {
        String b4 = motor("B4");
        saved(phone.tap("bench.step", content().put("motor", b4).put("deed", "lubricate")));
        saved(phone.tap(
                "bench.step", content().put("motor", b4).put("deed", "wind").put("reason", "practice")));
        stopHall();
        assertTrue(first().contains("It broke, or was run back before"), first());
        assertFalse(first().contains("<button>It was run back before</button>"), first());
        HttpResponse<String> answer = phone.form("/motor/run-back", Map.of("motor", b4, "turns", "", "before", "yes"));
        assertEquals(422, answer.statusCode());
        assertTrue(answer.body().contains("The bench says that it is wound"), answer.body());
    }

    @Test
    void of_two_that_answer_the_second_is_told_who_was_quicker() throws Exception {
        String b1 = motor("B1");
        begin(b1);
        stopHall();
        assertEquals(
                200,
                laptop.form("/motor/run-back", Map.of("motor", b1, "turns", "40"))
                        .statusCode());
        HttpResponse<String> second = runBack(b1, "45");
        assertEquals(409, second.statusCode());
        assertTrue(second.body().contains("any more: look again. The laptop said 'Run it back' at "), second.body());
    }

    @Test
    void when_the_hall_goes_on_nobody_is_asked_any_more() throws Exception {
        begin(motor("B1"));
        stopHall();
        String stop = org.skeinday.fault.CalledForTests.value(
                laptop.get("/first").body(), "name=\"stop\" value=\"([^\"]+)\"");
        assertEquals(200, laptop.form("/hall/resume", Map.of("stop", stop)).statusCode());
        assertFalse(first().contains(RUN_BACK));
    }

    @Test
    void on_a_practice_evening_without_an_event_the_hall_is_stopped_and_what_is_wound_is_run_back() throws Exception {
        FilledForms forms = new FilledForms(laptop);
        var practice = forms.save("events", forms.row("events", "Saltmarsh Rotor Day"), Map.of("kind", "practice"));
        assertEquals(204, practice.statusCode(), practice.body());
        for (String page : new String[] {"/now", "/bench"}) {
            assertTrue(laptop.get(page).body().contains("hx-post=\"/hall/stop\""), page);
        }
        assertFalse(phone.get("/bench").body().contains("hx-post=\"/hall/stop\""), "a helper says stop aloud");
        String b1 = motor("B1");
        begin(b1);
        stopHall();
        assertTrue(first().contains("The hall is stopped: fire"), first());
        assertTrue(first().contains("Motor B1, without an attempt"), first());
        JsonNode another =
                phone.tap("wind.alone", content().put("motor", motor("B4")).put("stop", "count"));
        assertTrue(another.toString().contains("The hall is stopped (fire or alarm)"), another.toString());
        HttpResponse<String> answer = runBack(b1, "40");
        assertEquals(200, answer.statusCode(), answer.body());
        assertFalse(first().contains(RUN_BACK), "answered");
        app.close();
        app = Demo.startEmpty(root.resolve("day"), clock);
        laptop = new Visitor(app.port(), "", 85);
        assertTrue(first().contains("The hall is stopped: fire"), "a restart changes nothing");
        var hosting = new FilledForms(laptop)
                .save(
                        "events",
                        new FilledForms(laptop).row("events", "Saltmarsh Rotor Day"),
                        Map.of("kind", "hosting"));
        assertEquals(204, hosting.statusCode(), hosting.body());
        assertTrue(first().contains("The hall is stopped: fire"), "nor does an event that is prepared meanwhile");
        String stop = org.skeinday.fault.CalledForTests.value(
                laptop.get("/first").body(), "name=\"stop\" value=\"([^\"]+)\"");
        assertEquals(200, laptop.form("/hall/resume", Map.of("stop", stop)).statusCode());
        assertFalse(first().contains("The hall is stopped"));
        saved(laptop.tap("wind.alone", content().put("motor", motor("B4")).put("stop", "count")));
    }
}
