package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
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
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** What is wanted of a wind, the motor that is changed, and what is told after the landing. */
@Timeout(60)
class AfterFlightWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String entry;
    private String attempt;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 71);
        entry = CalledForTests.value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        call("A3");
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    private void call(String tag) throws Exception {
        String model = CalledForTests.value(laptop.get("/now").body(), "name=\"model\" value=\"([^\"]+)\"");
        var called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor(tag), "model", model));
        assertEquals(200, called.statusCode(), called.body());
        attempt = CalledForTests.value(called.body(), "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private void move(String to) throws Exception {
        var moved = laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to, "seen", ""));
        assertEquals(200, moved.statusCode(), moved.body());
    }

    private void fly() throws Exception {
        move("released");
        move("landed");
    }

    private String sent(String path, Map<String, String> fields) throws Exception {
        Map<String, String> all = new HashMap<>(Map.of("attempt", attempt, "unit", "in-ozf"));
        all.putAll(fields);
        return laptop.form(path, all).body();
    }

    @Test
    void what_is_wanted_stands_on_the_plan_and_is_wanted_again_of_the_next_attempt() throws Exception {
        assertTrue(sent("/winding/aim", Map.of("launch", "0.7", "ceiling", "0.6"))
                .contains("must not be above the torque limit"));
        assertTrue(sent("/winding/aim", Map.of("launch", "lots", "ceiling", "")).contains("lots"));
        String set = sent("/winding/aim", Map.of("launch", "0.41", "ceiling", "0.62"));
        assertTrue(set.contains("0.62 in·ozf") && set.contains("0.41 in·ozf"), set);
        assertTrue(laptop.get("/now").body().contains("0.41 in·ozf"));
        assertTrue(laptop.get("/cards").body().contains("0.62 in·ozf"), "on the printed card too");
        fly();
        assertTrue(sent("/winding/aim", Map.of("launch", "0.5", "ceiling", "")).contains("what was wanted stays"));
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "no watch", "seen", ""));
        call("B2");
        assertTrue(laptop.get("/winding").body().contains("0.62 in·ozf"), "wanted again");
    }

    @Test
    void the_wind_ends_on_the_typed_ceiling_and_the_launch_torque_is_told_against_what_was_wanted() throws Exception {
        sent("/winding/aim", Map.of("launch", "0.10", "ceiling", "0.20"));
        String id = laptop.newId();
        laptop.tapAs(id, "wind.begin", content().put("attempt", attempt));
        for (int i = 1; i <= 3; i++) {
            laptop.tap(
                    "wind.mark", content().put("wind", id + "-0").put("step", 1).put("elapsedMs", i * 10));
        }
        Visitor other = Demo.joined(app, "helper", "", 72);
        String live = other.get("/winding").body();
        assertTrue(live.contains("slower") && live.contains("on the meter · <b>1 to go</b>"), live);
        assertTrue(live.contains("<svg") && live.contains("torque limit 0.20 in·ozf"), live);
        laptop.tap(
                "wind.phase",
                content().put("wind", id + "-0").put("phase", "stopped").put("elapsedMs", 40));
        String held = other.get("/winding").body();
        assertTrue(held.contains("data-since=") && held.contains("bleed not known, hold at most 60 s"), held);
        laptop.tap("wind.mark", content().put("wind", id + "-0").put("step", -1).put("elapsedMs", 50));
        move("released");
        assertTrue(laptop.get("/winding").body().contains("The flight is on its way. "));
        move("landed");
        String landed = laptop.get("/winding").body();
        assertTrue(landed.contains("It has landed. ") && !landed.contains("on its way"), landed);
        String told = laptop.form(
                        "/winding/count", Map.of("wind", id + "-0", "atFull", "", "stop", "80", "backOff", "4"))
                .body();
        assertTrue(told.contains("launch torque as wanted (wanted 0.10 in·ozf)"), told);
        assertTrue(
                told.matches("(?s).*class=\"wound\" points=\"[0-9.]+,[0-9.]+ [0-9.]+,[0-9.]+ [0-9.]+,[0-9.]+\".*"),
                told);
        confirmedStays(id + "-0");
    }

    /** The turns are corrected, and the torque is as it was: what somebody said of it holds. */
    private void confirmedStays(String wind) throws Exception {
        String journal = Files.readString(root.resolve("day/journal.jsonl"));
        String nmm = CalledForTests.value(journal, "attempt\\.wound\".*?\"launchTorqueNmm\":([0-9.]+)");
        var confirmed = laptop.form("/evening/word", Map.of("flight", attempt, "number", "launch-torque=" + nmm));
        assertEquals(200, confirmed.statusCode(), confirmed.body());
        laptop.form("/winding/count", Map.of("wind", wind, "atFull", "", "stop", "81", "backOff", "4"));
        String attempts = laptop.zip("/export.zip").get("attempts.csv");
        assertTrue(attempts.contains(",81,") && attempts.contains("launch-torque tap confirmed"), attempts);
    }

    @Test
    void a_motor_that_broke_is_changed_for_another_and_its_wind_begins_anew() throws Exception {
        String id = laptop.newId();
        laptop.tapAs(id, "wind.begin", content().put("attempt", attempt));
        laptop.tap(
                "wind.phase",
                content().put("wind", id + "-0").put("phase", "broke").put("elapsedMs", 9000));
        Map<String, String> broke = Map.of("attempt", attempt, "motor", motor("A3"), "place", "strand");
        laptop.form("/attempt/people-safe", broke);
        laptop.form("/attempt/parted", broke);
        String page = Demo.joined(app, "helper", "", 73).get("/winding").body();
        assertTrue(page.contains("Another motor for this attempt") && page.contains(">B2,"), page);
        ObjectNode take =
                content().put("attempt", attempt).put("motor", motor("B2")).put("seenMotor", motor("A3"));
        assertEquals(
                "saved", laptop.tap("attempt.take-motor", take).path("state").asText());
        assertEquals(
                "saved", laptop.tap("attempt.take-motor", take).path("state").asText(), "two chose the same");
        var late = laptop.tap("attempt.take-motor", take.deepCopy().put("motor", motor("C1")));
        assertTrue(late.path("reason").asText().contains("Somebody was quicker"), late.toString());
        CalledForTests.lookAgain(laptop, attempt);
        String now = laptop.get("/winding").body();
        assertTrue(now.contains("motor B2") && now.contains("First crank turn"), now);
        var broken = laptop.tap(
                "attempt.take-motor", take.deepCopy().put("motor", motor("A3")).put("seenMotor", motor("B2")));
        assertTrue(broken.path("reason").asText().contains("broken"), broken.toString());
        fly();
        var after = laptop.tap(
                "attempt.take-motor", take.deepCopy().put("motor", motor("C1")).put("seenMotor", motor("B2")));
        assertTrue(after.path("reason").asText().contains("This attempt is landed"), after.toString());
    }

    @Test
    void three_numbers_are_enough_for_a_wind_that_nobody_read() throws Exception {
        fly();
        assertTrue(laptop.get("/winding").body().contains("The wind, in three numbers"));
        Map<String, String> good = Map.of("stop", "210", "backOff", "3", "peak", "0.62", "launch", "4,1 mN·m");
        assertTrue(sent("/winding/unread", with(good, "stop", "")).contains("are needed"));
        assertTrue(sent("/winding/unread", with(good, "backOff", "211")).contains("More was taken off than was wound"));
        assertTrue(sent("/winding/unread", with(good, "launch", "0.63")).contains("not above the highest torque"));
        assertTrue(sent("/winding/unread", with(good, "peak", "much")).contains("much"));
        String kept = sent("/winding/unread", good);
        assertTrue(kept.contains("value=\"210\"") && kept.contains("Correct them"), kept);
    }

    /** The demo's meter is marked in in·ozf: a value typed in mN·m is offered rounded, and keeps its own text all the same. */
    @Test
    void fields_sent_as_they_were_offered_change_nothing_of_the_record() throws Exception {
        fly();
        String kept = sent(
                "/winding/unread", Map.of("stop", "210", "backOff", "3", "peak", "3.1 mN·m", "launch", "2.7 mN·m"));
        Map<String, String> offered = new HashMap<>();
        for (String field : List.of("stop", "backOff", "peak", "launch")) {
            offered.put(field, CalledForTests.value(kept, "name=\"" + field + "\" value=\"([^\"]+)\""));
        }
        assertEquals("0.44 in·ozf", offered.get("peak"));
        Map<String, String> typed = torques();
        assertEquals("3.1 mN·m", typed.get("peakTorqueTyped"));
        assertEquals("3.1", typed.get("peakTorqueNmm"));
        assertTrue(sent("/winding/unread", offered).contains("Correct them"));
        assertEquals(typed, torques());
        sent("/winding/unread", with(offered, "peak", "0.45"));
        assertEquals("0.45 in-ozf", torques().get("peakTorqueTyped"));
        assertEquals("2.7 mN·m", torques().get("launchTorqueTyped"));
    }

    /** As the journal has them, each as it was said last. */
    private Map<String, String> torques() throws Exception {
        Map<String, String> last = new HashMap<>();
        for (String line : Files.readAllLines(root.resolve("day/journal.jsonl"))) {
            for (String name : List.of("peakTorqueNmm", "peakTorqueTyped", "launchTorqueNmm", "launchTorqueTyped")) {
                Json.MAPPER.readTree(line).findValuesAsText(name).forEach(value -> last.put(name, value));
            }
        }
        return last;
    }

    private static Map<String, String> with(Map<String, String> fields, String field, String value) {
        Map<String, String> more = new HashMap<>(fields);
        more.put(field, value);
        return more;
    }

    /** The worked case of the trade's notes: 210 wound, 3 off, 44 left at ratio 10 over 1:48 are 1630 turns, 905.6 a minute. */
    @Test
    void turns_left_make_the_flights_figures_and_the_motor_is_run_back() throws Exception {
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "from paper instead", "seen", ""));
        Map<String, String> card = new HashMap<>(Map.of("entry", entry, "attempt", "1", "model", "Reed One"));
        card.putAll(Map.of("motor", "A3", "stop-count", "210", "back-off", "3", "watch-1", "1:48", "watch-2", "1:48"));
        var keyed = laptop.form("/key-in", card);
        assertEquals(200, keyed.statusCode(), keyed.body());
        String page = laptop.get("/winding").body();
        assertTrue(page.contains("still to be told: turns left<"), page);
        attempt = CalledForTests.value(page, "/winding\\?flight=([^\"]+)\"");
        assertTrue(laptop.get("/winding?flight=" + attempt).body().contains("needs the turns left"));
        Map<String, String> told = Map.of("flight", attempt, "remaining", "44", "spoilt", "", "contact", "");
        assertTrue(sent("/winding/landed", with(told, "remaining", "208")).contains("More turns are left"));
        assertTrue(sent("/winding/landed", with(told, "contact", "0:31")).contains("Say what it touched"));
        String figures = sent("/winding/landed", told);
        assertTrue(figures.contains("1630 motor turns") && figures.contains("440 motor turns, 21 %"), figures);
        assertTrue(figures.contains("15.1 turns/s, 906 turns/min over 1:48.0"), figures);
        assertTrue(figures.contains("many left: the section is too small"), figures);
        assertTrue(laptop.get("/bench").body().contains("run back"), "nobody has to say so again");
        String spoilt = sent("/winding/landed", with(with(told, "spoilt", "touched a wall"), "contact", "0:31"));
        assertTrue(spoilt.contains("the remainder says nothing") && spoilt.contains("value=\"0:31\""), spoilt);
        app.close();
        Files.delete(root.resolve("day/skeinday.mv.db"));
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 74);
        String again = laptop.get("/winding?flight=" + attempt).body();
        assertTrue(again.contains(">To Winding</a>"), "no attempt is under way");
        assertTrue(again.contains("touched a wall") && again.contains("1630 motor turns"), "after a rebuild");
    }

    @Test
    void nothing_is_left_before_the_landing_and_an_unknown_attempt_is_said() throws Exception {
        move("released");
        assertTrue(sent("/winding/landed", Map.of("remaining", "4", "spoilt", "", "contact", ""))
                .contains("Turns are left after a landing"));
        assertEquals(404, laptop.get("/winding?flight=nothing").statusCode());
        var unknown = laptop.form("/winding/aim", Map.of("attempt", "nothing", "unit", "in-ozf"));
        assertEquals(404, unknown.statusCode(), unknown.body());
    }

    @Test
    void under_none_the_reader_tells_turns_and_sees_no_figures_before_the_end() throws Exception {
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "anew", "seen", ""));
        new FilledForms(laptop)
                .save(
                        "terms",
                        new FilledForms(laptop).row("terms", "Saltmarsh Rotor Day"),
                        Map.of("outside-help", "none"));
        call("A3");
        Visitor reader = Demo.joined(app, "helper", "", 75);
        String id = reader.newId();
        reader.tapAs(id, "wind.begin", content().put("attempt", attempt));
        reader.tap("wind.mark", content().put("wind", id + "-0").put("step", 1).put("elapsedMs", 1000));
        fly();
        reader.form("/winding/count", Map.of("wind", id + "-0", "atFull", "", "stop", "80", "backOff", "4"));
        Map<String, String> told = Map.of("attempt", attempt, "remaining", "10", "spoilt", "", "contact", "");
        String own = reader.form("/winding/landed", told).body();
        assertTrue(own.contains("Noted.") && !own.contains("many left") && !own.contains("<svg"), own);
        String others = laptop.get("/winding").body();
        assertFalse(others.contains("After the landing") || others.contains("<svg"), others);
    }
}
