package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
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

/** Winds without an attempt: for practice, to a metronome, until a motor breaks. */
@Timeout(60)
class WindAloneWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.startWithUndo(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 81);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private String begin(String motor, String stop) throws Exception {
        String id = laptop.newId();
        var answer =
                laptop.tapAs(id, "wind.alone", content().put("motor", motor).put("stop", stop));
        assertEquals("saved", answer.path("state").asText(), answer.toString());
        return id + "-0";
    }

    private void mark(String wind, int step, long ms) throws Exception {
        laptop.tap("wind.mark", content().put("wind", wind).put("step", step).put("elapsedMs", ms));
    }

    private void phase(String wind, String phase, long ms) throws Exception {
        var answer = laptop.tap(
                "wind.phase", content().put("wind", wind).put("phase", phase).put("elapsedMs", ms));
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    private String count(String motor, String wind, String stop, String backOff) throws Exception {
        return laptop.form(
                        "/winding/motor/" + motor + "/count",
                        Map.of("wind", wind, "atFull", "", "stop", stop, "backOff", backOff))
                .body();
    }

    @Test
    void a_practice_wind_makes_the_motor_wound_and_its_turns_are_counted_afterwards() throws Exception {
        String b1 = motor("B1");
        assertTrue(laptop.get("/winding/motor/" + b1).body().contains("First crank turn"));
        String wind = begin(b1, "count");
        mark(wind, 1, 4000);
        phase(wind, "stopped", 30_000);
        assertTrue(laptop.get("/bench/motor/" + b1).body().contains("wound"));
        phase(wind, "off-meter", 40_000);
        String counted = count(b1, wind, "120", "2");
        assertTrue(counted.contains("120 crank turns"), counted);
        var again = laptop.tap("wind.alone", content().put("motor", b1).put("stop", "count"));
        assertTrue(again.path("reason").asText().contains("wound"), "a loaded motor is not wound: " + again);
    }

    @Test
    void a_break_that_is_taken_back_on_the_bench_goes_out_of_its_wind_too() throws Exception {
        String b1 = motor("B1");
        String wind = begin(b1, "count");
        mark(wind, 1, 4000);
        phase(wind, "broke", 30_000);
        count(b1, wind, "120", "0");
        assertTrue(winds(b1).contains(", broke"), winds(b1));
        String bench = laptop.get("/bench/motor/" + b1).body();
        String step = CalledForTests.value(bench, "data-tap=\"bench.undo\" data-step=\"([^\"]+)\"");
        var undone = laptop.tap("bench.undo", content().put("step", step));
        assertEquals("saved", undone.path("state").asText(), undone.toString());
        assertFalse(laptop.get("/bench/motor/" + b1).body().contains("broken"), "the motor is whole");
        assertFalse(winds(b1).contains(", broke"), winds(b1));
    }

    @Test
    void a_reading_of_the_hold_that_cannot_be_is_asked_about_and_waits_for_a_word_once_it_is_insisted_upon()
            throws Exception {
        String b1 = motor("B1");
        String wind = begin(b1, "count");
        mark(wind, 1, 4000);
        phase(wind, "stopped", 30_000);
        phase(wind, "off-meter", 120_000);
        Map<String, String> held = new HashMap<>(Map.of("wind", wind, "atFull", "", "stop", "120", "backOff", "0"));
        held.putAll(Map.of("held", "7.8 at 0:40; 0.02 at 1:20", "unit", "in-ozf"));
        String asked = laptop.form("/winding/motor/" + b1 + "/count", held).body();
        assertTrue(asked.contains("The hold was read as 7.8 in-ozf at 0:40, "), asked);
        String code = CalledForTests.value(asked, "name=\"insist\" value=\"([^\"]+)\"");
        assertFalse(laptop.get("/evening").body().contains("7.8 in-ozf at 0:40"), "nothing was saved yet");
        held.put("insist", code);
        laptop.form("/winding/motor/" + b1 + "/count", held);
        String evening = laptop.get("/evening").body();
        assertTrue(evening.contains("7.8 in-ozf at 0:40"), evening);
        String doubt = CalledForTests.value(winds(b1), "name=\"mark\" value=\"([^\"]+)\"");
        var so = laptop.tap("wind.confirm", content().put("mark", doubt));
        assertEquals("saved", so.path("state").asText(), so.toString());
        assertFalse(laptop.get("/evening").body().contains("7.8 in-ozf at 0:40"), "confirmed, nobody asks again");
        var out = laptop.tap("wind.leave-out", content().put("mark", doubt));
        assertEquals("saved", out.path("state").asText(), out.toString());
        assertFalse(winds(b1).contains("7.8 in-ozf") || !winds(b1).contains("0.02 in-ozf"), winds(b1));
    }

    private String winds(String motor) throws Exception {
        return laptop.get("/winding/motor/" + motor).body();
    }

    @Test
    void a_gritty_motor_and_one_of_an_attempt_under_way_are_refused_in_words() throws Exception {
        String b1 = motor("B1");
        laptop.tap("bench.step", content().put("motor", b1).put("deed", "fall"));
        var gritty = laptop.tap("wind.alone", content().put("motor", b1).put("stop", "count"));
        assertTrue(gritty.path("reason").asText().contains("wash it with mild soap"), gritty.toString());
        String a3 = motor("A3");
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        laptop.form("/attempt/call", Map.of("entry", entry, "motor", a3));
        var taken = laptop.tap("wind.alone", content().put("motor", a3).put("stop", "count"));
        assertTrue(taken.path("reason").asText().contains("in attempt 1 of Curlew"), taken.toString());
    }

    @Test
    void a_metronome_goes_with_practice_only_at_20_to_180_a_minute() throws Exception {
        String b1 = motor("B1");
        for (int wrong : new int[] {19, 181}) {
            var refused = laptop.tap(
                    "wind.alone",
                    content().put("motor", b1).put("stop", "count").put("beats", wrong));
            assertTrue(refused.path("reason").asText().contains("20 to 180"), refused.toString());
        }
        var test = laptop.tap(
                "wind.alone", content().put("motor", b1).put("stop", "breaking").put("beats", 60));
        assertTrue(test.path("reason").asText().contains("never cranked to a metronome"), test.toString());
        String id = laptop.newId();
        laptop.tapAs(
                id,
                "wind.alone",
                content().put("motor", b1).put("stop", "count").put("beats", 60));
        phase(id + "-0", "stopped", 90_000);
        phase(id + "-0", "off-meter", 100_000);
        String page = laptop.get("/winding/motor/" + b1).body();
        assertTrue(page.contains("value=\"90\"") && page.contains("60 a minute"), "as many turns as beats: " + page);
        assertTrue(count(b1, id + "-0", "90", "2").contains("paced: kept out of fits"));
    }

    /** 0.05 in·ozf a mark, four marks: 0.20 in·ozf at break, 85 % of it is the ceiling of a motor of the same section. */
    @Test
    void motors_wound_to_breaking_give_the_batch_its_k_and_its_ceiling() throws Exception {
        String b1 = motor("B1");
        assertTrue(laptop.get("/winding/motor/" + motor("B2"))
                .body()
                .contains("not known: the turns limit ends the wind"));
        String wind = begin(b1, "breaking");
        for (int i = 1; i <= 4; i++) {
            mark(wind, 1, i * 5000);
        }
        assertFalse(Demo.joined(app, "helper", "", 82)
                .get("/winding/motor/" + b1)
                .body()
                .contains("<p class=\"wind-word\">slower"));
        phase(wind, "broke", 30_000);
        assertTrue(laptop.get("/bench/motor/" + b1).body().contains("broken"));
        phase(wind, "off-meter", 40_000);
        String told = count(b1, wind, "270", "");
        assertTrue(told.contains("2700 motor turns") && told.contains("0.20 in·ozf"), told);
        String batch = CalledForTests.value(laptop.get("/bench/motor/" + b1).body(), "/bench/break-test/([^\"]+)\"");
        String found = laptop.get("/bench/break-test/" + batch).body();
        assertTrue(found.contains(">2700</td>") && found.contains(">42.0</td>"), found);
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor("B2")));
        String plan = laptop.get("/winding").body();
        assertTrue(plan.contains("from 1 break test"), plan);
    }

    @Test
    void a_break_by_accident_gives_no_ceiling_until_the_coach_says_that_it_was_a_test() throws Exception {
        String b1 = motor("B1");
        String wind = begin(b1, "count");
        for (int i = 1; i <= 4; i++) {
            mark(wind, 1, i * 5000);
        }
        phase(wind, "broke", 30_000);
        phase(wind, "off-meter", 40_000);
        count(b1, wind, "91", "");
        String page = laptop.get("/bench/motor/" + b1).body();
        assertTrue(page.contains("At 910 motor turns: an accident"), page);
        String batch = CalledForTests.value(page, "/bench/break-test/([^\"]+)\"");
        String test = laptop.get("/bench/break-test/" + batch).body();
        assertTrue(test.contains("<td>accident</td>") && test.contains("none read yet"), test);
        Visitor captain = Demo.joined(app, "captain", "", 84);
        assertEquals(
                403,
                captain.form("/bench/motor/" + b1 + "/break", Map.of("cause", "test"))
                        .statusCode());
        assertFalse(captain.get("/bench/motor/" + b1).body().contains("What was it?"), "the coach's alone");
        assertTrue(judged(b1, "test", 200).contains("a break test, from which"));
        assertTrue(laptop.get("/bench/break-test/" + batch).body().contains("0.20 in·ozf, from one motor"));
        assertTrue(judged(b1, "dropped", 200).contains("outside the rubber"));
        assertTrue(laptop.get("/bench/break-test/" + batch).body().contains("none read yet"));
        assertTrue(judged(b1, "wind", 422).contains("Why a motor broke must be one of"));
        judged(motor("B2"), "test", 422);
    }

    private String judged(String motor, String cause, int status) throws Exception {
        var answer = laptop.form("/bench/motor/" + motor + "/break", Map.of("cause", cause));
        assertEquals(status, answer.statusCode(), answer.body());
        return answer.body();
    }

    @Test
    void what_was_read_of_a_hold_is_typed_with_the_turns_and_stays() throws Exception {
        String b1 = motor("B1");
        String wind = begin(b1, "count");
        phase(wind, "stopped", 30_000);
        phase(wind, "off-meter", 140_000);
        assertTrue(laptop.get("/winding/motor/" + b1).body().contains("Torque while held, in·ozf"));
        Map<String, String> turns = new HashMap<>(Map.of("wind", wind, "atFull", "", "stop", "206", "backOff", "0"));
        turns.putAll(Map.of("held", "5.5 after noon", "unit", "mN-m"));
        var wrong = laptop.form("/winding/motor/" + b1 + "/count", turns);
        assertEquals(422, wrong.statusCode());
        assertTrue(wrong.body().contains("5.5 after noon"), wrong.body());
        turns.put("held", "5.5 at 0:10; 0.76 in-ozf at 1:40");
        String saved = laptop.form("/winding/motor/" + b1 + "/count", turns).body();
        assertTrue(saved.contains("value=\"5.5 mN-m at 0:10; 0.76 in-ozf at 1:40\""), saved);
        turns.remove("held");
        assertTrue(laptop.form("/winding/motor/" + b1 + "/count", turns).body().contains("0.76 in-ozf at 1:40"));
    }

    @Test
    void a_break_that_was_a_slip_of_the_hand_is_taken_back_with_the_wind() throws Exception {
        String b1 = motor("B1");
        String wind = begin(b1, "count");
        mark(wind, 1, 2000);
        phase(wind, "broke", 5000);
        assertTrue(laptop.get("/bench/motor/" + b1).body().contains("broken"));
        phase(wind, "again", 6000);
        assertFalse(laptop.get("/bench/motor/" + b1).body().contains(">broken<"));
    }

    /** The batch's band begins where the wind does, at no turns. */
    @Test
    void a_wind_after_three_of_its_batch_has_its_page_and_is_finished() throws Exception {
        for (String tag : new String[] {"A1", "A2", "A3"}) {
            String wound = begin(motor(tag), "count");
            mark(wound, 1, 0);
            mark(wound, 1, 10_000);
            phase(wound, "stepping-in", 15_000);
            mark(wound, 1, 20_000);
            phase(wound, "stopped", 30_000);
            phase(wound, "off-meter", 40_000);
            count(motor(tag), wound, "120", "2");
        }
        String a4 = motor("A4");
        String wind = begin(a4, "count");
        mark(wind, 1, 0);
        mark(wind, 1, 10_000);
        phase(wind, "stepping-in", 15_000);
        var seen = Demo.joined(app, "helper", "", 83).get("/winding/motor/" + a4);
        assertEquals(200, seen.statusCode(), seen.body());
        assertTrue(seen.body().contains("8 of 10 earlier winds of this batch"), seen.body());
        phase(wind, "stopped", 30_000);
        phase(wind, "off-meter", 40_000);
        String counted = count(a4, wind, "120", "2");
        assertTrue(counted.contains("120 crank turns"), counted);
    }
}
