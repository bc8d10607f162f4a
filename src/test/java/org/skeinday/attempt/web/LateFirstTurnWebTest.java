package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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

/** The first crank turn comes in after the captain went on without it: what is wound is asked about until it is run back. */
@Timeout(120)
class LateFirstTurnWebTest {
    private static final String RUN_BACK = "Run it back: how many turns are on?";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor reader;
    private FilledForms forms;
    private String attempt;
    private String motor;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 31);
        reader = Demo.joined(app, "helper", "", 32);
        forms = new FilledForms(laptop);
        motor = id("motors", "A3");
        HttpResponse<String> called = call("A3");
        assertEquals(200, called.statusCode(), called.body());
        attempt = CalledForTests.value(called.body(), "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String id(String kind, String name) throws Exception {
        return forms.row(kind, name).replaceFirst(".*/", "");
    }

    private HttpResponse<String> call(String tag) throws Exception {
        return laptop.form("/attempt/call", Map.of("entry", id("entries", "Curlew"), "motor", id("motors", tag)));
    }

    private static void done(HttpResponse<String> answer) {
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private void giveUp() throws Exception {
        done(laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "the window is over")));
    }

    private String takeOther() throws Exception {
        String other = id("motors", "B5");
        done(laptop.form("/attempt/take-motor", Map.of("attempt", attempt, "motor", other, "seenMotor", motor)));
        return other;
    }

    /** As the reader's phone has it, which did not hear of the captain's act. */
    private String firstTurn() throws Exception {
        String id = reader.newId();
        ObjectNode begin =
                Json.MAPPER.createObjectNode().put("attempt", attempt).put("motor", motor);
        JsonNode answer = reader.tapAs(id, "wind.begin", begin);
        assertEquals("saved", answer.path("state").asText(), answer.toString());
        return id + "-0";
    }

    private void asks() throws Exception {
        for (String page : new String[] {
            laptop.get("/").body(),
            laptop.get("/bench").body(),
            reader.get("/first").body()
        }) {
            assertTrue(page.contains(RUN_BACK) && page.contains("motor A3"), page);
        }
    }

    private void asksNothing() throws Exception {
        assertEquals("", reader.get("/first").body().strip());
    }

    private void refusedAsInHand(HttpResponse<String> answer) {
        assertEquals(422, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("A3 is in the hands of Curlew"), answer.body());
    }

    @Test
    void after_it_was_abandoned_every_device_asks_for_the_turns_until_somebody_answers() throws Exception {
        giveUp();
        asksNothing();
        firstTurn();
        asks();
        refusedAsInHand(call("A3"));
        done(reader.form("/attempt/run-back", Map.of("attempt", attempt, "motor", motor, "turns", "20")));
        asksNothing();
        assertTrue(laptop.get("/attempt/" + attempt).body().contains("the window is over"), "the reason stays");
        done(call("A3"));
    }

    @Test
    void after_it_was_abandoned_and_run_back_a_late_turn_asks_nothing_more() throws Exception {
        done(laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding")));
        giveUp();
        asks();
        long wound = System.currentTimeMillis();
        done(reader.form("/attempt/run-back", Map.of("attempt", attempt, "motor", motor, "turns", "20")));
        ObjectNode begin = Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put("motor", motor)
                .put("serverMs", wound - 1)
                .put("boundMs", 1);
        JsonNode answer = reader.tap("wind.begin", begin);
        assertEquals("saved", answer.path("state").asText(), answer.toString());
        asksNothing();
    }

    @Test
    void after_another_motor_was_taken_the_first_one_is_asked_about_and_the_other_is_wound() throws Exception {
        String other = takeOther();
        asksNothing();
        firstTurn();
        asks();
        assertTrue(reader.get("/first").body().contains("changed for another"));
        refusedAsInHand(
                laptop.form("/attempt/take-motor", Map.of("attempt", attempt, "motor", motor, "seenMotor", other)));
        CalledForTests.letWind(laptop, attempt);
        done(laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding")));
        asks();
        HttpResponse<String> none = reader.form("/motor/run-back", Map.of("motor", motor, "turns", ""));
        assertEquals(422, none.statusCode());
        assertTrue(none.body().contains("Say how many crank turns were on"), none.body());
        done(reader.form("/motor/run-back", Map.of("motor", motor, "turns", "20")));
        asksNothing();
        assertTrue(
                laptop.get("/now").body().contains("class=\"now\" aria-current=\"step\">winding"),
                "the other one is wound on");
        assertEquals(
                409,
                laptop.form("/motor/run-back", Map.of("motor", motor, "turns", "20"))
                        .statusCode(),
                "it is answered");
    }

    @Test
    void one_that_was_changed_and_wound_does_not_hide_the_other_when_the_attempt_is_abandoned() throws Exception {
        String other = takeOther();
        CalledForTests.letWind(laptop, attempt);
        done(laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding")));
        firstTurn();
        giveUp();
        asks();
        done(reader.form("/motor/run-back", Map.of("motor", motor, "turns", "20")));
        String left = reader.get("/first").body();
        assertTrue(left.contains(RUN_BACK) && left.contains("motor B5"), left);
        assertFalse(left.contains("motor A3"), left);
        done(reader.form("/attempt/run-back", Map.of("attempt", attempt, "motor", other, "turns", "20")));
        asksNothing();
    }

    @Test
    void one_that_was_changed_and_broke_is_asked_about_no_more() throws Exception {
        takeOther();
        String wind = firstTurn();
        asks();
        ObjectNode broke = Json.MAPPER
                .createObjectNode()
                .put("wind", wind)
                .put("phase", "broke")
                .put("elapsedMs", 9_000);
        assertEquals("saved", reader.tap("wind.phase", broke).path("state").asText());
        asksNothing();
    }
}
