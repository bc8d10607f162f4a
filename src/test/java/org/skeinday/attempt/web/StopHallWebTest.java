package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
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
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** The whole hall stands still: what is wound is run back, windows wait, and go on shifted together. */
@Timeout(120)
class StopHallWebTest {
    private static final String RUN_BACK = "Run it back: how many turns are on?";

    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private Visitor phone;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        laptop = new Visitor(app.port(), "", 51);
        phone = Demo.joined(app, "helper", "", 52);
        new FilledForms(laptop).window("Curlew", clock, -5, 10);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private HttpResponse<String> stopHall(String reason, String words) throws Exception {
        return laptop.form("/hall/stop", Map.of("stop-reason", reason, "stop-words", words));
    }

    private HttpResponse<String> goOn() throws Exception {
        String stop = value(laptop.get("/first").body(), "name=\"stop\" value=\"([^\"]+)\"");
        return laptop.form("/hall/resume", Map.of("stop", stop));
    }

    private static void says(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    /** When the window closes, as the page counts down to it, epoch ms. */
    private long closes(String page) {
        return Long.parseLong(value(page, "window closes in(?:</p>\\s*<p class=\"huge\"| <b) data-until=\"(\\d+)\""));
    }

    private String holding() throws Exception {
        String now = laptop.get("/now").body();
        String entry = value(now, "name=\"entry\" value=\"([^\"]+)\"");
        String motor = value(now, "(?s)name=\"motor\".*?<option value=\"([^\"]+)\"");
        laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor));
        String attempt = CalledForTests.letWind(laptop);
        for (String to : new String[] {"winding", "holding"}) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to));
        }
        return attempt;
    }

    @Test
    void what_is_wound_is_run_back_nothing_begins_and_windows_go_on_with_what_they_had_left() throws Exception {
        String attempt = holding();
        long before = closes(laptop.get("/now").body());
        says(200, "The hall is stopped: injury: a hand", stopHall("injury", "a hand"));
        for (Visitor who : new Visitor[] {laptop, phone}) {
            says(200, "The hall is stopped: injury", who.get("/bench"));
            says(200, RUN_BACK, who.get("/first"));
        }
        assertFalse(phone.get("/first").body().contains("The hall goes on"), "a helper does not say so");
        assertFalse(laptop.get("/now").body().contains("window closes in"), "no window runs");
        String motor = value(phone.get("/first").body(), "name=\"motor\" value=\"([^\"]+)\"");
        phone.form("/attempt/run-back", Map.of("attempt", attempt, "motor", motor, "turns", "180"));
        assertFalse(phone.get("/first").body().contains(RUN_BACK), "it is run back");
        says(
                422,
                "The hall is stopped (injury: a hand): nothing is called or wound before it goes on",
                laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding")));
        JsonNode tap = phone.tap(
                "wind.begin",
                Json.MAPPER.createObjectNode().put("attempt", attempt).put("motor", motor));
        assertTrue(tap.toString().contains("The hall is stopped"), tap.toString());
        clock.stepBy(Duration.ofMinutes(9));
        assertEquals(200, goOn().statusCode());
        assertFalse(laptop.get("/now").body().contains("The hall is stopped"));
        assertEquals(before + 9 * 60_000, closes(laptop.get("/now").body()), 5_000);
        String sheet = laptop.get("/results").body();
        assertTrue(sheet.contains("The hall stood still") && sheet.contains("injury: a hand"), sheet);
    }

    @Test
    void nobody_is_called_while_it_stands_and_one_stop_is_enough() throws Exception {
        assertEquals(200, stopHall("lights", "").statusCode());
        says(409, "stopped already: lights out. The laptop said 'Stop the hall' at ", stopHall("fire", ""));
        String entry = value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        says(422, "The hall is stopped (lights out)", laptop.form("/attempt/call", Map.of("entry", entry)));
        assertEquals(200, goOn().statusCode());
        HttpResponse<String> late = laptop.form("/hall/resume", Map.of("stop", "another"));
        says(409, "goes on already: look again. The laptop said 'The hall goes on' at ", late);
        assertEquals(200, laptop.form("/attempt/call", Map.of("entry", entry)).statusCode());
    }

    @Test
    void a_window_that_had_closed_stays_closed_and_one_to_come_keeps_its_distance() throws Exception {
        new FilledForms(laptop).window("Plover", clock, -30, -20);
        new FilledForms(laptop).window("Avocet", clock, 20, 30);
        String plover = window("Plover");
        String avocet = window("Avocet");
        stopHall("fire", "");
        clock.stepBy(Duration.ofMinutes(60));
        goOn();
        assertEquals(plover, window("Plover"));
        assertEquals((minutes(avocet) + 60) % DAY, minutes(window("Avocet")) % DAY, 1);
    }

    @Test
    void a_stop_that_lasts_past_the_closing_closes_nothing() throws Exception {
        for (String other : new String[] {"Plover", "Avocet"}) {
            new FilledForms(laptop).window(other, clock, -30, -20);
        }
        stopHall("fire", "");
        clock.stepBy(Duration.ofMinutes(60));
        String now = laptop.get("/now").body();
        assertFalse(now.contains("Every window has closed"), now);
        assertTrue(now.contains("Curlew, attempt 1"), now);
        assertFalse(now.contains("too late to be inside the window"), now);
        goOn();
        assertEquals(
                200, laptop.form("/attempt/call", Map.of("entry", nextEntry())).statusCode());
    }

    @Test
    void the_latest_start_on_a_card_and_the_cards_that_are_missed_wait_as_the_windows_do() throws Exception {
        String attempt = holding();
        for (String to : new String[] {"released", "landed"}) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to));
        }
        long before = latestStart();
        stopHall("floor", "");
        clock.stepBy(Duration.ofMinutes(60));
        assertEquals(before + 60 * 60, latestStart(), 2, "seconds after the window opened");
        String missed = "Curlew: 2 of 3 attempts are not in the record";
        assertFalse(laptop.get("/evening").body().contains(missed), "its window has not closed");
        goOn();
        assertFalse(laptop.get("/evening").body().contains(missed), "it goes on with what it had left");
        clock.stepBy(Duration.ofMinutes(11));
        assertTrue(
                laptop.get("/evening").body().contains(missed),
                laptop.get("/evening").body());
    }

    /** Of Curlew's first card, seconds after the window opens. */
    private long latestStart() throws Exception {
        String[] parts = value(
                        laptop.get("/cards").body(),
                        "(?s)<h1>Curlew, attempt.*?<dt>Latest start</dt><dd>(\\d+:\\d\\d) after opening")
                .split(":");
        return Long.parseLong(parts[0]) * 60 + Long.parseLong(parts[1]);
    }

    @Test
    void windows_of_another_day_do_not_wait_for_the_hall_of_a_practice_evening() throws Exception {
        new FilledForms(laptop).window("Avocet", clock, 3 * 24 * 60, 3 * 24 * 60 + 10);
        String avocet = window("Avocet");
        stopHall("lights", "");
        clock.stepBy(Duration.ofMinutes(7));
        assertEquals(avocet, window("Avocet"));
        goOn();
        assertEquals(avocet, window("Avocet"));
    }

    private String nextEntry() throws Exception {
        return value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
    }

    @Test
    void a_window_that_is_set_during_the_stop_stays_as_it_was_set() throws Exception {
        new FilledForms(laptop).window("Avocet", clock, 20, 30);
        stopHall("fire", "");
        clock.stepBy(Duration.ofMinutes(60));
        new FilledForms(laptop).window("Avocet", clock, 20, 30);
        String avocet = window("Avocet");
        String curlew = window("Curlew");
        clock.stepBy(Duration.ofMinutes(10));
        goOn();
        assertEquals(avocet, window("Avocet"), "whoever set it knew of the stop");
        assertEquals(curlew, window("Curlew"), "it was open: it opened when it did, and closes later");
        long left = closes(laptop.get("/now").body()) - clock.millis();
        assertTrue(left > 0 && left <= 11 * 60_000, left + " ms left of at most 10 minutes");
    }

    @Test
    void what_is_released_during_the_stop_is_judged_by_the_window_that_waits() throws Exception {
        String attempt = holding();
        stopHall("floor", "");
        clock.stepBy(Duration.ofMinutes(15));
        for (String to : new String[] {"released", "landed"}) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to));
        }
        String now = laptop.get("/now").body();
        assertTrue(now.contains("landed"), now);
        assertFalse(now.contains("after the window closed") || now.contains("after it closed"), now);
        goOn();
        now = laptop.get("/now").body();
        assertFalse(now.contains("after the window closed") || now.contains("after it closed"), now);
    }

    private String window(String entry) throws Exception {
        return value(laptop.get("/now").body(), "<b>" + entry + "</b>.*?</p>\\s*<p class=\"when\">([0-9:]+) ");
    }

    /** Of the clock: an evening goes on past midnight. */
    private static final int DAY = 24 * 60;

    private static int minutes(String clockTime) {
        String[] parts = clockTime.split(":");
        return Integer.parseInt(parts[0]) * 60 + Integer.parseInt(parts[1]);
    }

    @Test
    void it_still_stands_after_a_restart() throws Exception {
        stopHall("other", "the roof drips");
        app.close();
        app = Demo.startEmpty(root.resolve("day"));
        says(200, "The hall is stopped: another reason: the roof drips", new Visitor(app.port(), "", 53).get("/bench"));
    }
}
