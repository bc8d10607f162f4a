package org.skeinday.steps.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
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
import org.skeinday.steps.Step;

/** What comes in after a list was answered asks again what it must, and nothing else. */
@Timeout(120)
class ListsLaterWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String attempt;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 96);
        attempt = CalledForTests.callWithItsMotor(laptop);
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

    private String tick(String list, String step, String answer) throws Exception {
        return tick(list, attempt, step, answer);
    }

    private String tick(String list, String subject, String step, String answer) throws Exception {
        String id = laptop.newId();
        saved(laptop.tapAs(
                id,
                "step.tick",
                content()
                        .put("list", list)
                        .put("subject", subject)
                        .put("step", step)
                        .put("answer", answer)
                        .put("revision", 2)));
        return id + "-0";
    }

    private String checks(String list) throws Exception {
        return laptop.get("/checks?list=" + list + "&subject=" + attempt).body();
    }

    private void mark(String what, String about) throws Exception {
        saved(laptop.tap(
                "watch.mark",
                content()
                        .put("attempt", attempt)
                        .put("slot", 1)
                        .put("what", what)
                        .put("ms", 21_000)
                        .put("about", about)));
    }

    @Test
    void a_contact_that_a_watch_brings_later_asks_the_contacts_of_the_landing_again_and_nothing_else()
            throws Exception {
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released"));
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "landed"));
        mark("touched", null);
        assertFalse(checks("after-landing").contains("has marked a contact since"), "nothing was answered yet");
        tick("after-landing", "rotor-held", null);
        tick("after-landing", "contacts", "0");
        mark("touched", null);
        String page = checks("after-landing");
        assertTrue(page.contains("a watch has marked a contact since: say again what it touched"), page);
        assertTrue(page.contains("Correct: Rotor stopped"), page);
        assertFalse(page.contains("Correct: Contacts"), "it is open: " + page);
        tick("after-landing", "contacts", "1");
        assertTrue(checks("after-landing").contains("Correct: Contacts"));
    }

    private HttpResponse<String> correct(String about, String step, String done) throws Exception {
        return laptop.form(
                "/checks/correct",
                Map.of(
                        "list",
                        "before-winding",
                        "subject",
                        attempt,
                        "about",
                        about,
                        "step",
                        step,
                        "done",
                        done,
                        "answer",
                        "",
                        "reason",
                        "looked again"));
    }

    @Test
    void the_line_is_never_free_by_a_correction_and_is_asked_again_by_one_of_something_else() throws Exception {
        String event =
                CalledForTests.value(laptop.get("/checks").body(), "/checks\\?list=packing&amp;subject=([^\"]+)\"");
        tick("winding-place", event, "mount-pulled", "15");
        tick("winding-place", event, "distances", "by eye");
        tick("winding-place", event, "adult-here", null);
        String rings = tick("before-winding", "rings", null);
        String mount = tick("before-winding", "mount", null);
        for (String step : List.of("adult", "motor", "model-away", Step.EYES)) {
            tick("before-winding", step, null);
        }
        tick("before-winding", "direction", "cw");
        tick("before-winding", "ratio", "10");
        String line = tick("before-winding", Step.LINE, null);
        assertEquals(200, correct(line, Step.LINE, "no").statusCode());
        HttpResponse<String> again = correct(line, Step.LINE, "yes");
        assertEquals(422, again.statusCode(), again.body());
        assertTrue(
                again.body().contains("The line is looked at again, last before winding: tick it anew"), again.body());
        assertEquals(200, correct(rings, "rings", "no").statusCode());
        tick("before-winding", "rings", null);
        tick("before-winding", Step.LINE, null);
        assertTrue(checks("before-winding").contains("Correct: Nobody but the winder in line"));
        assertEquals(200, correct(mount, "mount", "no").statusCode());
        assertEquals(200, correct(mount, "mount", "yes").statusCode());
        assertFalse(checks("before-winding").contains("Correct: Nobody but the winder in line"), "it comes last");
    }
}
