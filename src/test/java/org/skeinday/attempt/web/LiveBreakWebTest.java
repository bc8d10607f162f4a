package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
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

/** A motor that breaks late, twice, or not at all: people are asked about after each real break, and about no other. */
@Timeout(120)
class LiveBreakWebTest {
    private static final String PEOPLE = "Broke. Hands off. Check people.";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor reader;
    private String attempt;
    private String motor;
    private int elapsedMs;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 94);
        reader = Demo.joined(app, "timekeeper", "", 95);
        motor = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private String begin() throws Exception {
        String id = reader.newId();
        JsonNode answer =
                reader.tapAs(id, "wind.begin", content().put("attempt", attempt).put("motor", motor));
        assertEquals("saved", answer.path("state").asText(), answer.toString());
        return id + "-0";
    }

    private void tap(String wind, String phase) throws Exception {
        elapsedMs += 60_000;
        ObjectNode tap = content().put("wind", wind).put("phase", phase).put("elapsedMs", elapsedMs);
        assertEquals("saved", reader.tap("wind.phase", tap).path("state").asText());
    }

    private HttpResponse<String> say(Visitor who, String address, String... more) throws Exception {
        Map<String, String> form = new HashMap<>(Map.of("attempt", attempt, "motor", motor));
        for (int i = 0; i < more.length; i += 2) {
            form.put(more[i], more[i + 1]);
        }
        return who.form(address, form);
    }

    private void done(Visitor who, String address, String... more) throws Exception {
        HttpResponse<String> answer = say(who, address, more);
        assertEquals(200, answer.statusCode(), address + " " + answer.body());
    }

    private String first() throws Exception {
        return reader.get("/first").body();
    }

    private String motorState() throws Exception {
        return CalledForTests.value(laptop.get("/bench/motor/" + motor).body(), "class=\"state[^\"]*\">([^<]+)<");
    }

    private static void says(String words, String html) {
        assertTrue(html.contains(words), words + " in " + html);
    }

    private static void saysNot(String words, String html) {
        assertFalse(html.contains(words), words + " in " + html);
    }

    /** After a break somebody may be hurt: the way to say so stands beside the other one. */
    @Test
    void where_somebody_is_hurt_the_captain_stops_the_hall_from_the_same_place() throws Exception {
        tap(begin(), "broke");
        says("Somebody is hurt? The captain stops the hall.", first());
        String beside = laptop.get("/first").body();
        says("Somebody is hurt: stop the hall", beside);
        says("name=\"stop-reason\" value=\"injury\"", beside);
        assertEquals(
                200,
                laptop.form("/hall/stop", Map.of("stop-reason", "injury", "stop-words", ""))
                        .statusCode());
        says("The hall is stopped: injury", first());
        says(PEOPLE, first());
        saysNot("Somebody is hurt", laptop.get("/first").body());
    }

    /** What was answered on Now is known on the motor's page, which offers no way to wind what is broken. */
    @Test
    void where_it_parted_is_known_on_the_motor_s_own_page_which_offers_no_winding_of_it() throws Exception {
        String whole = laptop.get("/bench/motor/" + motor).body();
        says("Wind it without an attempt", whole);
        says("Break test of its batch", whole);
        tap(begin(), "broke");
        String broken = laptop.get("/bench/motor/" + motor).body();
        saysNot("Wind it without an attempt", broken);
        saysNot("Break test of its batch", broken);
        says("nobody has said yet", broken);
        done(reader, "/attempt/people-safe");
        done(reader, "/attempt/parted", "place", "strand");
        String told = laptop.get("/bench/motor/" + motor).body();
        says("Where it parted: in the strand.", told);
        saysNot("nobody has said yet", told);
        says("<option value=\"accident\" selected>", told);
    }

    @Test
    void one_that_breaks_after_it_was_given_up_asks_for_people_and_stays_broken() throws Exception {
        tap(begin(), "stopped");
        done(laptop, "/attempt/give-up", "reason", "the window is over");
        says("Run it back: how many turns are on?", first());
        done(reader, "/attempt/broke-too");
        says(PEOPLE, first());
        says(PEOPLE, laptop.get("/").body());
        assertEquals(
                422, say(reader, "/attempt/run-back", "turns", "200").statusCode(), "nothing is left to be run back");
        assertEquals("broken", motorState());
        done(reader, "/attempt/people-safe");
        says("Where did it part?", first());
        done(reader, "/attempt/parted", "place", "hook");
        assertEquals("", first().strip());
        assertEquals("broken", motorState());
        says("abandoned", laptop.get("/attempt/" + attempt).body());
    }

    @Test
    void one_that_fell_on_the_floor_while_it_was_wound_is_gritty_after_it_was_run_back() throws Exception {
        begin();
        laptop.tap("bench.step", content().put("motor", motor).put("deed", "fall"));
        assertEquals("gritty", motorState());
        done(reader, "/attempt/run-back", "turns", "200");
        assertEquals("gritty", motorState());
    }

    @Test
    void after_a_mistaken_break_the_real_one_asks_for_people_again() throws Exception {
        String wind = begin();
        tap(wind, "broke");
        done(reader, "/attempt/people-safe");
        done(reader, "/attempt/parted", "place", "knot");
        tap(wind, "again");
        tap(wind, "broke");
        says(PEOPLE, first());
        says(
                "First: is everyone unhurt",
                say(reader, "/attempt/parted", "place", "strand").body());
        done(reader, "/attempt/people-safe");
        says("Where did it part?", first());
    }

    /** Until now it went back to winding, and the hold that live rings had been in was lost: nothing was wound since. */
    @Test
    void a_mistaken_break_is_taken_back_on_the_laptop_and_the_hold_goes_on() throws Exception {
        String wind = begin();
        tap(wind, "stopped");
        String since = heldSince();
        done(laptop, "/attempt/broke");
        says(PEOPLE, first());
        says(
                "<button class=\"second\">It did not break</button>",
                laptop.get("/now").body());
        done(laptop, "/attempt/not-broken");
        assertEquals("", first().strip());
        assertEquals("wound", motorState());
        says(
                "class=\"now\" aria-current=\"step\">holding<",
                reader.get("/winding/part").body());
        says("data-phase-now=\"stopped\"", reader.get("/winding/part").body());
        assertEquals(since, heldSince());
        tap(wind, "again");
        says(
                "class=\"now\" aria-current=\"step\">winding<",
                reader.get("/winding/part").body());
    }

    /** Epoch ms. */
    private String heldSince() throws Exception {
        return CalledForTests.value(laptop.get("/now").body(), "data-since=\"(\\d+)\"");
    }

    /** Whoever times it knows nothing of a break at the meter: what they tap says nothing of people. */
    @Test
    void a_watch_that_is_tapped_after_a_break_is_kept_and_moves_nothing() throws Exception {
        watchOne();
        begin();
        done(laptop, "/attempt/broke");
        assertEquals("saved", state(reader.tap("watch.release", watch())));
        says(PEOPLE, first());
        assertEquals("saved", state(reader.tap("watch.landing", watch().put("ms", 3_000))));
        says(PEOPLE, first());
        done(laptop, "/attempt/not-broken");
        says("class=\"now\" aria-current=\"step\">winding<", laptop.get("/now").body());
        done(laptop, "/attempt/give-up", "reason", "the window is over");
        assertEquals("saved", state(reader.tap("watch.release", watch())));
        says("Run it back: how many turns are on?", first());
    }

    /** The tap for the release was on its way when the captain said that the motor broke. */
    @Test
    void a_release_that_was_seen_before_the_break_and_comes_in_late_is_a_release() throws Exception {
        watchOne();
        begin();
        long nowMs = System.currentTimeMillis();
        done(laptop, "/attempt/broke");
        says(PEOPLE, first());
        assertEquals(
                "saved",
                state(reader.tap(
                        "watch.release", watch().put("serverMs", nowMs - 1).put("boundMs", 20))));
        says(
                "class=\"now\" aria-current=\"step\">in the air<",
                laptop.get("/now").body());
        says("Where did it part?", first());
    }

    private void watchOne() throws Exception {
        HttpResponse<String> taken = reader.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        assertEquals(200, taken.statusCode(), taken.body());
    }

    private ObjectNode watch() {
        return content().put("attempt", attempt).put("slot", 1);
    }

    private static String state(JsonNode answer) {
        return answer.path("state").asText();
    }

    @Test
    void without_a_reader_too_and_what_is_wound_is_not_forgotten_when_it_is_given_up() throws Exception {
        done(laptop, "/attempt/move", "to", "winding");
        done(laptop, "/attempt/move", "to", "holding");
        done(laptop, "/attempt/broke");
        assertEquals("broken", motorState());
        done(laptop, "/attempt/not-broken");
        assertEquals("wound", motorState());
        done(laptop, "/attempt/give-up", "reason", "the window is over");
        says("Run it back: how many turns are on?", first());
    }

    private void release() throws Exception {
        for (String to : new String[] {"winding", "holding", "released"}) {
            done(laptop, "/attempt/move", "to", to);
        }
    }

    @Test
    void in_the_air_it_is_asked_where_it_parted_and_a_mistake_is_taken_back() throws Exception {
        release();
        String before = motorState();
        done(laptop, "/attempt/broke");
        assertEquals("broken", motorState());
        says("Where did it part?", first());
        saysNot(PEOPLE, first());
        done(laptop, "/attempt/not-broken");
        assertEquals("", first().strip());
        assertEquals(before, motorState());
        says(
                "class=\"now\" aria-current=\"step\">in the air<",
                laptop.get("/now").body());
        done(laptop, "/attempt/broke");
        says("Where did it part?", first());
        done(reader, "/attempt/parted", "place", "knot");
        assertEquals("", first().strip());
        says("Where it parted: ", laptop.get("/bench/motor/" + motor).body());
    }

    @Test
    void what_broke_in_the_air_is_looked_at_after_the_landing() throws Exception {
        release();
        done(laptop, "/attempt/broke");
        done(laptop, "/attempt/move", "to", "landed");
        says("Where did it part?", first());
        done(reader, "/attempt/parted", "place", "ring");
        assertEquals("", first().strip());
    }

    @Test
    void in_the_air_a_motor_breaks_once() throws Exception {
        for (String to : new String[] {"winding", "holding", "released"}) {
            done(laptop, "/attempt/move", "to", to);
        }
        says("/attempt/broke\"", laptop.get("/now").body());
        done(laptop, "/attempt/broke");
        saysNot("/attempt/broke\"", laptop.get("/now").body());
        assertEquals(422, say(laptop, "/attempt/broke").statusCode());
        String bench = laptop.get("/bench/motor/" + motor).body();
        assertEquals(1, bench.split("<dd>broken", -1).length - 1, bench);
    }
}
