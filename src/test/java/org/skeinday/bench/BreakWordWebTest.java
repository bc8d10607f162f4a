package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

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

/** The coach's word about a break outweighs what anybody saw, is asked for on Evening, and no form that stood open undoes it. */
@Timeout(60)
class BreakWordWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String a3;
    private Map<String, String> broke;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 86);
        a3 = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", a3))
                .body();
        String attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
        String id = laptop.newId();
        laptop.tapAs(id, "wind.begin", Json.MAPPER.createObjectNode().put("attempt", attempt));
        laptop.tap(
                "wind.phase",
                Json.MAPPER
                        .createObjectNode()
                        .put("wind", id + "-0")
                        .put("phase", "broke")
                        .put("elapsedMs", 9000));
        broke = Map.of("attempt", attempt, "motor", a3, "place", "knot");
        laptop.form("/attempt/people-safe", broke);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void parted(String place) throws Exception {
        var answer =
                laptop.form("/attempt/parted", Map.of("attempt", broke.get("attempt"), "motor", a3, "place", place));
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private HttpResponse<String> judged(String cause, String seen) throws Exception {
        return laptop.form("/bench/motor/" + a3 + "/break", Map.of("cause", cause, "seen", seen));
    }

    private String page() throws Exception {
        return laptop.get("/bench/motor/" + a3).body();
    }

    private static String seen(String page) {
        return CalledForTests.value(page, "name=\"seen\" value=\"([^\"]*)\"");
    }

    @Test
    void what_somebody_saw_is_proposed_until_the_coach_speaks_and_not_afterwards_whichever_came_later()
            throws Exception {
        parted("knot"); // what anybody saw takes no break out of the risk: only the coach gives a cause outside the
        // rubber
        assertTrue(page().contains("an accident, which counts in the risk"), page());
        assertTrue(page().contains("as somebody saw it") && page().contains("value=\"knot\" selected"), page());
        assertTrue(laptop.get("/evening").body().contains("1 break waits for the coach"), "and he is asked");
        assertEquals(200, judged("accident", seen(page())).statusCode());
        assertTrue(page().contains("an accident, which counts in the risk"), page());
        parted("hook");
        assertTrue(page().contains("an accident, which counts in the risk"), page());
        assertEquals(200, judged("ring", seen(page())).statusCode());
        parted("strand");
        assertTrue(page().contains("outside the rubber") && page().contains("value=\"ring\" selected"), page());
    }

    @Test
    void a_form_that_stood_open_undoes_no_later_word_and_says_who_said_what() throws Exception {
        String open = seen(page());
        assertEquals(200, judged("test", open).statusCode());
        assertEquals(200, judged("test", open).statusCode(), "two said the same");
        HttpResponse<String> late = judged("dropped", open);
        assertEquals(409, late.statusCode(), late.body());
        assertTrue(late.body().contains("has said of this break meanwhile: It was a break test"), late.body());
        assertTrue(page().contains("a break test, from which"), page());
        assertEquals(200, judged("dropped", seen(page())).statusCode(), "who has seen it may say it anew");
    }

    @Test
    void breaks_wait_on_evening_for_the_coach_one_line_and_one_act_each() throws Exception {
        String evening = laptop.get("/evening").body();
        assertTrue(evening.contains("1 break waits for the coach"), evening);
        assertTrue(evening.contains("Motor A3 broke: accident"), evening);
        Visitor captain = Demo.joined(app, "captain", "", 87);
        String theirs = captain.get("/evening").body();
        assertTrue(theirs.contains("Motor A3 broke") && !theirs.contains("What was it?"), theirs);
        Map<String, String> word = Map.of("motor", a3, "cause", "hook", "seen", seen(evening));
        assertEquals(403, captain.form("/evening/break", word).statusCode());
        HttpResponse<String> said = laptop.form("/evening/break", word);
        assertEquals(200, said.statusCode(), said.body());
        assertFalse(said.body().contains("waits for the coach"), said.body());
        assertTrue(page().contains("value=\"hook\" selected"), page());
    }
}
