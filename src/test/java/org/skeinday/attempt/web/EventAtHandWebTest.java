package org.skeinday.attempt.web;

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
import org.skeinday.prepare.FilledForms;

/** A season holds several events; all pages are about one of them. */
@Timeout(60)
class EventAtHandWebTest {
    static final Map<String, String> LATER = Map.of("name", "Winter Reed Cup", "day", "2031-01-18", "kind", "hosting");

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private FilledForms forms;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 41);
        forms = new FilledForms(laptop);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String id(String event) throws Exception {
        return forms.row("events", event).replaceFirst(".*/row/", "");
    }

    private HttpResponse<String> use(String event) throws Exception {
        return laptop.form("/event/use", Map.of("event", event));
    }

    @Test
    void a_later_event_is_at_hand_until_somebody_goes_back_to_this_one() throws Exception {
        String first = laptop.get("/now").body();
        assertFalse(first.contains("Another event"), "one event is no choice");
        String curlew = CalledForTests.value(first, "name=\"entry\" value=\"([^\"]+)\"");
        String today = id("Saltmarsh Rotor Day");
        forms.add("events", LATER);
        String later = laptop.get("/now").body();
        assertFalse(later.contains("Call Curlew"), "the last day is prepared");
        assertTrue(later.contains("Today is Saltmarsh Rotor Day."), later);
        var stale = laptop.form("/attempt/call", Map.of("entry", curlew));
        assertEquals(409, stale.statusCode(), "an attempt is not called out of sight: " + stale.body());
        HttpResponse<String> back = use(today);
        assertEquals(200, back.statusCode(), back.body());
        assertTrue(back.body().contains("Call Curlew"), back.body());
        assertTrue(laptop.get("/inspection").body().contains("Saltmarsh Rotor Day"), "and Prepare is about it");
        assertTrue(laptop.get("/results").body().contains("Saltmarsh Rotor Day"), "the result sheet too");
        assertTrue(laptop.get("/day").body().contains("Saltmarsh Rotor Day"), "and the day");
    }

    @Test
    void an_event_that_is_added_while_an_attempt_is_under_way_or_the_hall_stands_still_stays_in_the_background()
            throws Exception {
        CalledForTests.callOnly(laptop);
        forms.add("events", LATER);
        assertTrue(
                laptop.get("/now").body().contains("Curlew, attempt 1"),
                laptop.get("/now").body());
        assertTrue(laptop.get("/timing").body().contains("Curlew, attempt 1"), "and so the watches");
    }

    @Test
    void a_hall_that_stands_still_stays_in_sight() throws Exception {
        laptop.form("/hall/stop", Map.of("stop-reason", "injury", "stop-words", ""));
        forms.add("events", LATER);
        assertTrue(
                laptop.get("/now").body().contains("Saltmarsh Rotor Day"),
                laptop.get("/now").body());
        var answer = use(id("Winter Reed Cup"));
        assertEquals(422, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("The hall stands still"), answer.body());
    }

    @Test
    void an_attempt_under_way_does_not_go_out_of_sight() throws Exception {
        String today = id("Saltmarsh Rotor Day");
        forms.add("events", LATER);
        String other = id("Winter Reed Cup");
        use(today);
        CalledForTests.callOnly(laptop);
        HttpResponse<String> answer = use(other);
        assertEquals(422, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("An attempt is under way"), answer.body());
        assertTrue(answer.body().contains("What can be done now: Start winding, "), answer.body());
        assertTrue(laptop.get("/now").body().contains("Curlew"), "still here");
        assertEquals(404, use("no-such-event").statusCode());
    }
}
