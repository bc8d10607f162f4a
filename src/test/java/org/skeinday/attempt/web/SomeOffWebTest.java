package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
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

/** Turns that come off a held motor leave its hold as it is; more turns begin it anew. */
@Timeout(60)
class SomeOffWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor reader;
    private String attempt;
    private String wind;

    @BeforeEach
    void hold() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 77);
        reader = Demo.joined(app, "helper", "", 78);
        String motor = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
        String id = reader.newId();
        saved(reader.tapAs(id, "wind.begin", content().put("attempt", attempt).put("motor", motor)));
        wind = id + "-0";
        phase("stopped");
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private static void saved(JsonNode answer) {
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    private void phase(String phase) throws Exception {
        saved(reader.tap(
                "wind.phase", content().put("wind", wind).put("phase", phase).put("elapsedMs", 60_000)));
    }

    private HttpResponse<String> someOff(String turns) throws Exception {
        return laptop.form("/attempt/some-off", Map.of("attempt", attempt, "turns-off", turns));
    }

    private static void says(String words, String html) {
        assertTrue(html.contains(words), words + " in " + html);
    }

    /** Epoch ms of the last turn that was put on, on the laptop's page and on the reader's: the same. */
    private String held() throws Exception {
        String now = CalledForTests.value(laptop.get("/now").body(), "data-since=\"(\\d+)\"");
        assertEquals(now, CalledForTests.value(reader.get("/winding/part").body(), "held <b data-since=\"(\\d+)\""));
        return now;
    }

    @Test
    void the_hold_runs_from_the_last_turn_whatever_comes_off_and_wherever_it_hangs() throws Exception {
        String since = held();
        assertEquals(200, someOff("2").statusCode());
        assertEquals(since, held());
        says("<dt>taken off</dt><dd>2 crank turns</dd>", laptop.get("/now").body());
        phase("backed-off");
        assertEquals(since, held());
        phase("off-meter");
        assertEquals(since, held());
        says("data-phase-now=\"off-meter\"", reader.get("/winding/part").body());
        assertEquals(200, someOff("1.5").statusCode());
        says("data-phase-now=\"backed-off\"", reader.get("/winding/part").body()); // on the meter again
        assertEquals(since, held());
        says("<dt>taken off</dt><dd>3.5 crank turns</dd>", laptop.get("/now").body());
        says(
                "<dt>taken off</dt><dd>3.5 crank turns</dd>",
                laptop.get("/attempt/" + attempt).body());
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released"));
        says("name=\"backOff\" value=\"5.5\"", reader.get("/winding").body()); // 2 as planned, and these
    }

    /** What no motor holds has not been on it: asked once, on Now and where the turns are asked for after it was given up. */
    @Test
    void turns_that_no_motor_holds_are_asked_about_where_they_come_off() throws Exception {
        HttpResponse<String> off = someOff("5000");
        assertEquals(422, off.statusCode());
        says("50000 motor turns: such a motor breaks at about", off.body());
        says("turns-beyond-breaking", off.body());
        String motor = CalledForTests.value(reader.get("/winding/part").body(), "data-of=\"([^\"]+)\"");
        Map<String, String> many = Map.of("attempt", attempt, "motor", motor, "turns", "9000");
        HttpResponse<String> held = laptop.form("/attempt/run-back", many);
        assertEquals(422, held.statusCode());
        says("90000 motor turns: such a motor breaks at about", held.body());
        says("id=\"turns-again\"", held.body()); // the form of Now stands on another part of the page
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "the window is over"));
        HttpResponse<String> asked = laptop.form("/attempt/run-back", many);
        assertEquals(422, asked.statusCode());
        says("name=\"insist\" value=\"turns-beyond-breaking\"", asked.body());
        assertFalse(asked.body().contains("id=\"turns-again\""), asked.body());
        says("Run it back: how many turns are on?", laptop.get("/first").body());
        Map<String, String> insisted = new java.util.HashMap<>(many);
        insisted.put("insist", "turns-beyond-breaking");
        assertEquals(200, laptop.form("/attempt/run-back", insisted).statusCode());
        assertEquals("", laptop.get("/first").body().strip());
    }

    @Test
    void more_turns_begin_the_hold_anew_also_for_a_motor_that_was_off_the_meter() throws Exception {
        String since = held();
        phase("off-meter");
        assertEquals(
                200,
                laptop.form("/attempt/more-turns", Map.of("attempt", attempt)).statusCode());
        says("data-phase-now=\"winding\"", reader.get("/winding/part").body());
        says("aria-current=\"step\">winding<", laptop.get("/now").body());
        saved(reader.tap(
                "wind.phase",
                content().put("wind", wind).put("phase", "stopped").put("elapsedMs", 90_000)));
        assertNotEquals(since, held());
    }

    @Test
    void turns_that_cannot_be_are_refused_beside_their_field_and_in_another_phase_by_its_words() throws Exception {
        HttpResponse<String> nothing = someOff("");
        assertEquals(422, nothing.statusCode());
        says("Say how many crank turns were taken off, for example 2", nothing.body());
        says("must be above 0", someOff("0").body());
        says("a number from 0 to 10000", someOff("lots").body());
        assertEquals(
                200,
                laptop.form("/attempt/more-turns", Map.of("attempt", attempt)).statusCode());
        HttpResponse<String> winding = someOff("2");
        assertEquals(422, winding.statusCode());
        says("This attempt is winding. What can be done now: ", winding.body());
    }
}
