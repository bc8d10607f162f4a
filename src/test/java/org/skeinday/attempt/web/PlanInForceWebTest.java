package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
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
import org.skeinday.browser.SteppedClock;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** The plan of the day in force and all pages say the same: who, with which motor, who is next, and whether it is kept. */
@Timeout(90)
class PlanInForceWebTest {
    private static final String WINDS = "<dt>winds / reads</dt><dd>([^/<]+?) / ";

    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private FilledForms forms;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        laptop = new Visitor(app.port(), "", 71);
        forms = new FilledForms(laptop);
        forms.window("Avocet", clock, -8, 80);
        forms.window("Curlew", clock, 100, 160);
        forms.window("Plover", clock, 30, 42);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void save(String kind, String row, Map<String, String> typed) throws Exception {
        HttpResponse<String> saved = forms.save(kind, forms.row(kind, row), typed);
        assertEquals(204, saved.statusCode(), saved.body());
    }

    private void takePlan() throws Exception {
        String proposed = laptop.form("/day/propose", Map.of()).body();
        String proposal = value(proposed, "name=\"proposal\" value=\"([^\"]+)\"");
        assertEquals(200, laptop.form("/day/take", Map.of("proposal", proposal)).statusCode());
    }

    private String id(String kind, String name) throws Exception {
        return forms.row(kind, name).replaceFirst(".*/", "");
    }

    private void post(String path, Map<String, String> form) throws Exception {
        HttpResponse<String> answer = laptop.form(path, form);
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private void move(String attempt, String to) throws Exception {
        post("/attempt/move", Map.of("attempt", attempt, "to", to));
    }

    /** The first attempt of Avocet, called with its motor and let wind. @return its id */
    private String called() throws Exception {
        post("/attempt/call", Map.of("entry", id("entries", "Avocet"), "number", "1", "assigned", "yes"));
        return CalledForTests.letWind(laptop);
    }

    private void fly(String attempt) throws Exception {
        for (String state : List.of("winding", "holding", "released", "landed")) {
            move(attempt, state);
        }
        for (int slot = 1; slot <= 2; slot++) {
            post(
                    "/attempt/type-time",
                    Map.of("attempt", attempt, "typed-slot", String.valueOf(slot), "typed", "1:50.0" + slot));
        }
        post("/attempt/close", Map.of("attempt", attempt, "why", "as read"));
    }

    private static String other(String winder) {
        return winder.equals("Tomek") ? "Jorun" : "Tomek";
    }

    @Test
    void who_was_to_wind_when_winding_began_has_wound_whatever_entry_and_plan_say_later() throws Exception {
        takePlan();
        String planned = value(laptop.get("/now").body(), WINDS);
        save("entries", "Avocet", Map.of("winds", other(planned)));
        assertEquals(planned, value(laptop.get("/now").body(), WINDS), "the plan goes before the entry");
        String attempt = called();
        move(attempt, "winding");
        String reader = laptop.newId();
        laptop.tapAs(reader, "wind.begin", Json.MAPPER.createObjectNode().put("attempt", attempt));
        assertEquals(planned, value(laptop.get("/now").body(), WINDS), "while it is wound");
        save("crew", planned, Map.of("clean-winds", ""));
        save("crew", other(planned), Map.of("clean-winds", ""));
        for (String state : List.of("holding", "released", "landed")) {
            move(attempt, state);
        }
        post("/winding/count", Map.of("wind", reader + "-0", "atFull", "", "stop", "190", "backOff", "2"));
        assertEquals(planned, value(laptop.get("/attempt/" + attempt).body(), "<dt>wound / read</dt><dd>([^/<]+?) / "));
        assertTrue(
                laptop.get("/evening/flight/" + attempt)
                        .body()
                        .replaceAll("<[^>]+>", " ")
                        .replaceAll("\\s+", " ")
                        .contains("wound by " + planned),
                laptop.get("/evening/flight/" + attempt).body());
        assertEquals(planned, value(laptop.get("/prepare/crew").body(), "Confirm 1 clean winds of (\\w+)"));
    }

    @Test
    void a_planned_motor_that_was_just_flown_is_said_to_come_ready_on_every_page() throws Exception {
        save("entries", "Avocet", Map.of("motors", "B5"));
        fly(called());
        takePlan();
        String day = laptop.get("/day").body();
        String first = "B5 is flown and needs 2 min on the Bench first";
        assertTrue(
                value(day, "Avocet 2 wind</th><td>[^<]*</td><td>([^<]*)</td>").startsWith("B5, ready from "), day);
        assertEquals("motor B5, no spare: " + first, value(day, "<dt>Avocet, attempt 2</dt><dd>([^<]*)</dd>"));
        String cards = laptop.get("/cards").body();
        assertEquals("B5, use 2. " + first, value(cards, "(?s)Avocet, attempt 2 .*?<dt>Motor</dt><dd>([^<]*)</dd>"));
        assertEquals("B5, use 3. " + first, value(cards, "(?s)Avocet, attempt 3 .*?<dt>Motor</dt><dd>([^<]*)</dd>"));
        assertFalse(cards.contains("<b></b>"), cards);
        String choice = laptop.get("/choice/" + id("entries", "Avocet")).body();
        assertTrue(choice.contains("motor B5, no spare: " + first), choice);
        assertTrue(choice.contains("No motor can be flown now: " + first), choice);
        String bench = laptop.get("/bench").body();
        assertEquals("B5", value(bench, "(?s).*>([A-C]\\d)<.*?>for Avocet, attempt 2<"));
        String now = laptop.get("/now").body();
        assertTrue(now.contains("none yet, by the plan: " + first), now);
    }

    @Test
    void a_card_without_a_motor_says_why_and_keeps_the_direction_of_the_model() throws Exception {
        save("entries", "Avocet", Map.of("motors", "B5"));
        String motor = id("motors", "B5");
        String answer = laptop.tap(
                        "bench.step",
                        Json.MAPPER.createObjectNode().put("motor", motor).put("deed", "fall"))
                .toString();
        assertTrue(answer.contains("saved"), answer);
        String cards = laptop.get("/cards").body();
        assertEquals(
                "none can be flown now: B5 is gritty",
                value(cards, "(?s)Avocet, attempt 1 .*?<dt>Motor</dt><dd>([^<]*)</dd>"));
        assertFalse(cards.contains("<b></b>"), cards);
        assertEquals(
                "none can be flown now: B5 is gritty. Bench has what each needs.",
                value(laptop.get("/now").body(), "<dt>motor</dt><dd>(none [^<]*)</dd>"));
        String choice = laptop.get("/choice/" + id("entries", "Avocet")).body();
        assertTrue(choice.contains("No motor can be flown now: B5 is gritty."), choice);
    }

    /** As the plan on the page has it. @param page of Day, or of a proposal */
    private static String planned(String page, String entry) {
        return value(page, entry + " 1 wind</th><td>[^<]*</td><td>([A-C]\\d)");
    }

    @Test
    void a_motor_that_is_planned_for_another_entry_is_taken_after_a_question_and_that_one_gets_another()
            throws Exception {
        save("entries", "Avocet", Map.of("motors", "A3 | B2 | B5"));
        save("entries", "Curlew", Map.of("motors", "A3 | B2 | B5"));
        takePlan();
        String theirs = planned(laptop.get("/day").body(), "Curlew");
        String motor = id("motors", theirs);
        Map<String, String> call = Map.of("entry", id("entries", "Avocet"), "number", "1", "motor", motor);
        HttpResponse<String> asked = laptop.form("/attempt/call", call);
        assertEquals(422, asked.statusCode(), asked.body());
        assertTrue(asked.body().contains(theirs + " is planned for Curlew, attempt 1. Choose it again"), asked.body());
        assertTrue(asked.body().contains("planned for Curlew: take it all the same</option>"), asked.body());
        assertEquals(motor, value(asked.body(), "name=\"meant\" value=\"([^\" ]+)"));
        Map<String, String> again = new HashMap<>(call);
        again.put("meant", motor);
        post("/attempt/call", again);
        String next = value(laptop.get("/day").body(), "<dt>Curlew, attempt 1</dt><dd>motor ([A-C]\\d)");
        assertFalse(next.equals(theirs), "another is dealt to it: " + next);
        assertEquals(next, value(laptop.get("/bench").body(), "(?s).*>([A-C]\\d)<.*?>for Curlew, attempt 1<"));
    }

    @Test
    void a_motor_that_an_attempt_has_in_hand_is_said_to_be_with_it_on_every_page() throws Exception {
        save("entries", "Avocet", Map.of("motors", "B5"));
        called();
        String with = "none can be flown now: B5 is with Avocet";
        String choice = laptop.get("/choice/" + id("entries", "Avocet")).body();
        assertTrue(choice.contains(with.replaceFirst("none", "No motor")), choice);
        String cards = laptop.get("/cards").body();
        assertEquals(with, value(cards, "(?s)Avocet, attempt 2 .*?<dt>Motor</dt><dd>([^<]*)</dd>"));
    }

    /** The entry that the card of Now, the wall and the order of flight have next. */
    private void next(String entry) throws Exception {
        assertEquals(entry, value(laptop.get("/now").body(), "<h1>(\\w+), attempt"));
        assertEquals(entry, value(laptop.get("/results/wall").body(), "<h1>(\\w+)</h1>"));
        assertEquals(entry, value(laptop.get("/results/order").body(), "<h1>Next: (\\w+), "));
    }

    @Test
    void an_open_window_comes_before_a_later_one_and_what_is_planned_before_both() throws Exception {
        next("Avocet");
        forms.window("Plover", clock, 9, 21);
        next("Plover");
        takePlan();
        next("Avocet");
    }

    @Test
    void winding_that_begins_earlier_than_planned_is_no_slip_on_any_page() throws Exception {
        takePlan();
        String attempt = called();
        move(attempt, "winding");
        kept();
        clock.stepBy(Duration.ofSeconds(100));
        kept();
        move(attempt, "holding");
        kept();
    }

    private void kept() throws Exception {
        String now = laptop.get("/now").body();
        assertFalse(now.contains("The plan has slipped"), now);
        String day = laptop.get("/day").body();
        assertTrue(day.contains("Every window is kept with at least"), day);
        assertFalse(day.contains("cannot be kept any more"), day);
    }
}
