package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
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

/** Slips of the hand are undone, a missed mark is set, and somebody beside the line says where the winder stands. */
@Timeout(60)
class WindTapsWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor reader;
    private Visitor spotter;
    private String attempt;
    private String motor;
    private String wind;
    private String unused;

    @BeforeEach
    void begin() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 71);
        reader = Demo.joined(app, "helper", "", 72);
        spotter = Demo.joined(app, "helper", "", 73);
        motor = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
        unused = uses();
        wind = tap(reader, "wind.begin", content().put("attempt", attempt).put("motor", motor));
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    /** @return id of what the tap made */
    private static String tap(Visitor who, String kind, ObjectNode content) throws Exception {
        String id = who.newId();
        JsonNode answer = who.tapAs(id, kind, content);
        assertEquals("saved", answer.path("state").asText(), answer.toString());
        return id + "-0";
    }

    private String mark(int step, long elapsedMs) throws Exception {
        return tap(
                reader,
                "wind.mark",
                content().put("wind", wind).put("step", step).put("elapsedMs", elapsedMs));
    }

    private String phase(String phase, long elapsedMs) throws Exception {
        return tap(
                reader,
                "wind.phase",
                content().put("wind", wind).put("phase", phase).put("elapsedMs", elapsedMs));
    }

    private ObjectNode undo(String tap, long elapsedMs) {
        return content().put("wind", wind).put("tap", tap).put("elapsedMs", elapsedMs);
    }

    private void undone(String tap, long elapsedMs) throws Exception {
        tap(reader, "wind.undo", undo(tap, elapsedMs));
    }

    private String refused(String tap, long elapsedMs) throws Exception {
        JsonNode answer = reader.tap("wind.undo", undo(tap, elapsedMs));
        assertEquals("refused", answer.path("state").asText(), answer.toString());
        return answer.path("reason").asText();
    }

    private static void says(String words, String html) {
        assertTrue(html.contains(words), words + " in " + html);
    }

    private String state() throws Exception {
        return CalledForTests.value(laptop.get("/now").body(), "aria-current=\"step\">([^<]+)<");
    }

    private String motorState() throws Exception {
        return CalledForTests.value(laptop.get("/bench/motor/" + motor).body(), "class=\"state[^\"]*\">([^<]+)<");
    }

    private String level() throws Exception {
        return CalledForTests.value(reader.get("/winding/part").body(), "data-level=\"(\\d+)\"");
    }

    @Test
    void a_mark_that_was_a_slip_is_taken_out_of_the_record_within_ten_seconds_and_not_later() throws Exception {
        mark(1, 1_000);
        String slip = mark(1, 5_000);
        assertEquals("2", level());
        undone(slip, 14_000);
        assertEquals("1", level());
        assertEquals("This was undone already", refused(slip, 14_500));
        String old = mark(1, 20_000);
        says("A tap can be undone for 10 s; this one is 13 s old", refused(old, 33_000));
        assertEquals("2", level());
        says(
                "no such tap to undo",
                reader.tap("wind.undo", undo("nothing", 1)).path("reason").asText());
    }

    @Test
    void a_mistaken_last_turn_is_undone_with_all_that_it_did() throws Exception {
        String before = motorState();
        String stopped = phase("stopped", 60_000);
        assertEquals("holding", state());
        assertEquals("wound", motorState());
        undone(stopped, 65_000);
        assertEquals("winding", state());
        assertEquals(before, motorState());
        phase("stopped", 70_000);
        assertEquals("holding", state());
        assertEquals("wound", motorState());
    }

    @Test
    void of_two_steps_the_later_one_is_undone_first() throws Exception {
        String stopped = phase("stopped", 60_000);
        String off = phase("backed-off", 62_000);
        assertEquals("Something else was said since: undo that first", refused(stopped, 63_000));
        undone(off, 63_000);
        undone(stopped, 63_500);
        assertEquals("winding", state());
    }

    @Test
    void more_turns_that_were_a_slip_leave_the_hold_where_it_began() throws Exception {
        phase("stopped", 60_000);
        String again = phase("again", 62_000);
        assertEquals("winding", state());
        undone(again, 64_000);
        assertEquals("holding", state());
        assertEquals("wound", motorState());
    }

    @Test
    void a_mistaken_break_is_undone_for_ten_seconds_and_nothing_is_asked_any_more() throws Exception {
        String before = motorState();
        String broke = phase("broke", 30_000);
        says("Broke. Hands off. Check people.", laptop.get("/first").body());
        undone(broke, 36_000);
        assertFalse(laptop.get("/first").body().contains("Broke."), "nobody is asked");
        assertEquals("winding", state());
        assertEquals(before, motorState());
    }

    @Test
    void everyone_unhurt_is_no_slip_that_is_undone() throws Exception {
        phase("broke", 30_000);
        String unhurt = phase("off-meter", 33_000);
        says("After a break this is not undone", refused(unhurt, 34_000));
    }

    @Test
    void a_first_crank_turn_that_was_a_slip_leaves_the_attempt_called_and_the_motor_unused() throws Exception {
        assertNotEquals(unused, uses());
        undone(wind, 4_000);
        assertEquals("called", state());
        assertEquals(unused, uses());
        String page = reader.get("/winding/part").body();
        says("data-wind=\"\"", page);
        wind = tap(reader, "wind.begin", content().put("attempt", attempt).put("motor", motor));
        assertEquals("winding", state()); // and not the second
        mark(1, 1_000);
        says("has gone on since", refused(wind, 2_000));
    }

    private String uses() throws Exception {
        return CalledForTests.value(laptop.get("/bench/motor/" + motor).body(), "(not used yet|used \\d+ times?)");
    }

    @Test
    void a_missed_mark_is_set_to_what_the_meter_shows_and_never_beyond_its_end() throws Exception {
        mark(1, 1_000);
        ObjectNode six = content().put("wind", wind).put("division", 6).put("elapsedMs", 2_000);
        String set = tap(reader, "wind.set", six);
        assertEquals("6", level());
        mark(1, 5_000);
        assertEquals("7", level());
        undone(set, 6_000);
        assertEquals("2", level());
        JsonNode beyond = reader.tap("wind.set", six.deepCopy().put("division", 21));
        says("The meter ends at division 20, but was set to 21: read it again", beyond.toString());
        JsonNode below = reader.tap("wind.set", six.deepCopy().put("division", -1));
        says("must be 0 to 1000, but was -1", below.toString());
        assertEquals("2", level());
    }

    @Test
    void a_floor_mark_that_two_people_see_is_counted_once_and_both_read_the_same() throws Exception {
        String at = spotter.get("/winding/part").body();
        says("floor mark 2</button>", at);
        says("stand at mark 1 · to mark 2 by ", at);
        assertFalse(at.contains("floor mark 1<"), "there everybody begins");
        ObjectNode two = content().put("wind", wind).put("number", "2"); // as a button sends it
        String seen = tap(spotter, "wind.floor-mark", two);
        tap(laptop, "wind.floor-mark", two);
        for (Visitor who : new Visitor[] {spotter, laptop}) {
            String page = who.get("/winding/part").body();
            says("at mark 2 · to mark 3 by ", page);
            says("disabled>✓ floor mark 2</button>", page);
        }
        says("Undo floor mark 2", spotter.get("/winding/part").body());
        assertFalse(laptop.get("/winding/part").body().contains("Undo floor mark"), "it said nothing first");
        says("data-at-mark=\"2\"", reader.get("/winding/part").body());
        tap(spotter, "wind.undo", content().put("wind", wind).put("tap", seen));
        says("stand at mark 1", laptop.get("/winding/part").body());
        JsonNode six =
                spotter.tap("wind.floor-mark", content().put("wind", wind).put("number", 6));
        says("A floor mark's number must be 1 to 5, but was 6", six.toString());
    }

    @Test
    void a_place_that_only_the_pace_tells_is_called_estimated_and_one_that_was_seen_is_not() throws Exception {
        mark(1, 1_000);
        phase("stepping-in", 1_500);
        String followed = spotter.get("/winding/part").body();
        says(" · estimated", followed);
        says(" turns, estimated", followed);
        tap(spotter, "wind.floor-mark", content().put("wind", wind).put("number", 3));
        String seen = spotter.get("/winding/part").body();
        says("at mark 3 · to mark 4 by ", seen);
        assertFalse(seen.contains(" · estimated"), seen);
    }

    @Test
    void the_limits_and_the_count_to_step_in_at_stand_on_every_page_from_first_to_last() throws Exception {
        String limits = CalledForTests.value(reader.get("/winding/part").body(), "class=\"limits\">([^<]+)<");
        assertTrue(
                limits.matches("turns limit \\d+ crank turns · torque limit .+ · step in at \\d+ crank turns"), limits);
        for (String step : new String[] {"stepping-in", "stopped", "backed-off", "off-meter"}) {
            phase(step, 60_000);
            for (Visitor who : new Visitor[] {reader, spotter, laptop}) {
                says(limits, who.get("/winding/part").body());
            }
        }
    }
}
