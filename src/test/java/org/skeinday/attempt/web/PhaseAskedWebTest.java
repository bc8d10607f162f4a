package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
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

/** Where the record's state and the phase differ, pages go by the phase. */
@Timeout(90)
class PhaseAskedWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor timekeeper;
    private String attempt;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 71);
        timekeeper = Demo.joined(app, "timekeeper", "", 72);
        CalledForTests.callWithItsMotor(laptop);
        attempt = CalledForTests.letWind(laptop);
        new FilledForms(laptop).window("Curlew", Clock.systemDefaultZone(), 0, 60);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void done(String address, String... fields) throws Exception {
        Map<String, String> form = new HashMap<>(Map.of("attempt", attempt));
        for (int i = 0; i < fields.length; i += 2) {
            form.put(fields[i], fields[i + 1]);
        }
        HttpResponse<String> answer = laptop.form(address, form);
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private String left() throws Exception {
        return CalledForTests.value(laptop.get("/now").body(), "<dt>left after it</dt><dd>([^<]+)<");
    }

    @Test
    void after_more_turns_what_is_left_of_the_window_is_counted_from_the_winding_again() throws Exception {
        done("/attempt/move", "to", "winding");
        String winding = left();
        done("/attempt/move", "to", "holding");
        assertNotEquals(winding, left(), "nothing more to wind");
        done("/attempt/more-turns");
        assertEquals(winding, left());
    }

    @Test
    void while_people_are_asked_about_no_window_runs_and_a_release_seen_then_was_none() throws Exception {
        assertEquals(
                200,
                timekeeper
                        .form("/watch/take", Map.of("attempt", attempt, "slot", "2"))
                        .statusCode());
        done("/attempt/move", "to", "winding");
        assertTrue(timing().contains("the window closes in"), timing());
        done("/attempt/broke");
        assertFalse(timing().contains("the window closes in"), timing());
        timekeeper.tap(
                "watch.release",
                Json.MAPPER.createObjectNode().put("attempt", attempt).put("slot", 2));
        assertTrue(timing().contains("Its motor broke before that: nothing flew."), timing());
    }

    private String timing() throws Exception {
        return timekeeper.get("/timing/part").body();
    }

    @Test
    void an_attempt_that_was_given_up_before_its_release_asks_nothing_of_a_flight() throws Exception {
        done("/attempt/give-up", "reason", "the window is over");
        HttpResponse<String> winding = laptop.get("/winding?flight=" + attempt);
        assertEquals(200, winding.statusCode(), winding.body());
        assertFalse(winding.body().contains("/winding/landed"), winding.body());
    }

    /** The hands rule: whoever winds has no key on the device that they hold, whatever else they do today. */
    @Test
    void a_timekeeper_who_winds_has_no_key_from_the_first_turn_to_the_release() throws Exception {
        String now = laptop.get("/now").body();
        String winder = CalledForTests.value(now, "(?s)name=\"hand-winds\">.*?<option value=\"([^\"]+)\"");
        done(
                "/attempt/name-hands",
                "entry",
                CalledForTests.value(now, "name=\"entry\" value=\"([^\"]+)\""),
                "number",
                "1",
                "hand-winds",
                winder);
        Visitor own = Demo.joined(app, "timekeeper", "", 73, winder);
        assertEquals(
                200,
                own.form("/watch/take", Map.of("attempt", attempt, "slot", "2")).statusCode());
        String line = "You are the one who winds it: until the release you have no key here.";
        assertTrue(keys(own).contains("data-watch-target") && !keys(own).contains(line), keys(own));
        done("/attempt/move", "to", "winding");
        assertTrue(keys(own).contains(line) && !keys(own).contains("data-watch-target"), keys(own));
        assertTrue(keys(own).contains("Somebody with free hands takes watch 2 over."), keys(own));
        assertFalse(timing().contains("until the release you have no key"), "others have theirs");
        done("/attempt/move", "to", "released");
        assertTrue(keys(own).contains("data-watch-target"), keys(own));
    }

    private static String keys(Visitor who) throws Exception {
        return who.get("/timing/part").body();
    }
}
