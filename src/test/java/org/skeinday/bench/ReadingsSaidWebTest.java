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

/** A word about one reading of a wind, and readings that come in after the turns were counted, reach what rests on them. */
@Timeout(60)
class ReadingsSaidWebTest {
    private static final String ABOVE = "Marks are far above the band of the batch";
    private static final String NO_HOLD = "not known (0 of 3 holds)";
    private static final String ONE_HOLD = "not known (1 of 3 holds)";
    private static final String BLEED = "Bleed of a hold of batch B changed from ";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.startWithUndo(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 302);
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

    private void saved(String kind, ObjectNode content) throws Exception {
        var answer = laptop.tap(kind, content);
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    /** A wind outside any attempt whose needle goes up by a mark each so many milliseconds, off the meter again. */
    private String wound(String motor, int marks, long apartMs) throws Exception {
        String id = laptop.newId();
        var begun = laptop.tapAs(id, "wind.alone", content().put("motor", motor).put("stop", "count"));
        assertEquals("saved", begun.path("state").asText(), begun.toString());
        String wind = id + "-0";
        marks(wind, marks, apartMs);
        phases(wind);
        return wind;
    }

    private void marks(String wind, int marks, long apartMs) throws Exception {
        for (int i = 1; i <= marks; i++) {
            saved("wind.mark", content().put("wind", wind).put("step", 1).put("elapsedMs", apartMs * i));
        }
    }

    private void phases(String wind) throws Exception {
        phase(wind, "stopped", 30_000);
        phase(wind, "backed-off", 33_000);
        phase(wind, "off-meter", 240_000);
    }

    private void phase(String wind, String phase, long ms) throws Exception {
        saved("wind.phase", content().put("wind", wind).put("phase", phase).put("elapsedMs", ms));
    }

    private String word(String motor, String wind, String mark, String word) throws Exception {
        var said =
                laptop.form("/winding/motor/" + motor + "/reading", Map.of("wind", wind, "mark", mark, "word", word));
        assertEquals(200, said.statusCode(), said.body());
        return said.body();
    }

    private String doubt(String page) {
        return CalledForTests.value(page, "name=\"mark\" value=\"([^\"]+)\"");
    }

    @Test
    void a_word_about_a_reading_of_a_hold_says_what_it_does_to_the_bleed_and_so_does_taking_it_back() throws Exception {
        String b1 = motor("B1");
        String wind = wound(b1, 5, 5_000);
        Map<String, String> held = new HashMap<>(Map.of("wind", wind, "atFull", "", "stop", "100", "backOff", "2"));
        held.putAll(Map.of("held", "0.31 at 0:40; 0.30 at 1:20; 0.295 at 2:40", "unit", "in-ozf"));
        String asked = laptop.form("/winding/motor/" + b1 + "/count", held).body();
        held.put("insist", CalledForTests.value(asked, "name=\"insist\" value=\"([^\"]+)\""));
        String insisted = laptop.form("/winding/motor/" + b1 + "/count", held).body();
        assertFalse(insisted.contains(BLEED), "what is asked about is in no fit: " + insisted);
        String mark = doubt(insisted);
        String so = word(b1, wind, mark, "so");
        assertTrue(so.contains(BLEED + NO_HOLD + ", to " + ONE_HOLD + "."), so);
        assertTrue(so.contains("Take that back"), so);
        String again = word(b1, wind, mark, "again");
        assertTrue(again.contains(BLEED + ONE_HOLD + ", to " + NO_HOLD + "."), again);
        assertTrue(again.contains("Yes, it was so"), "asked once more: " + again);
        String out = word(b1, wind, mark, "left-out");
        assertTrue(out.contains(BLEED + NO_HOLD + ", to " + ONE_HOLD + "."), out);
        var nothing =
                laptop.form("/winding/motor/" + b1 + "/reading", Map.of("wind", wind, "mark", mark, "word", "again"));
        assertEquals(422, nothing.statusCode(), nothing.body());
        assertTrue(nothing.body().contains("Nobody has said anything of this reading"), nothing.body());
    }

    @Test
    void a_mark_that_was_left_out_by_a_slip_is_taken_in_again() throws Exception {
        String b2 = motor("B2");
        String wind = wound(b2, 24, 1_000);
        Map<String, String> turns = Map.of("wind", wind, "atFull", "", "stop", "100", "backOff", "2");
        String asked = laptop.form("/winding/motor/" + b2 + "/count", turns).body();
        assertTrue(asked.contains("Mark 21 lies beyond the meter"), asked);
        String mark = doubt(asked);
        String out = word(b2, wind, mark, "left-out");
        assertTrue(out.contains("The tap 0:21 after the first turn is left out"), out);
        assertFalse(out.contains("Mark 24 lies"), "all after it are lower: " + out);
        assertTrue(word(b2, wind, mark, "again").contains("Mark 24 lies"), "as it was");
    }

    @Test
    void marks_that_come_in_after_the_turns_were_counted_are_held_against_the_band_at_once() throws Exception {
        for (String tag : new String[] {"B1", "B2", "B3"}) {
            String wind = wound(motor(tag), 5, 5_000);
            counted(motor(tag), wind);
        }
        String b5 = motor("B5");
        String wind = wound(b5, 5, 5_000);
        counted(b5, wind);
        assertFalse(laptop.get("/evening").body().contains(ABOVE), "like the others");
        marks(wind, 10, 900);
        assertTrue(laptop.get("/evening").body().contains(ABOVE), "the outbox of the reader came late");
    }

    /** A wind of Curlew's attempt up to mark 5, off the meter again, and its form of turns. */
    private Map<String, String> ofAnAttempt() throws Exception {
        String attempt = CalledForTests.callWithItsMotor(laptop);
        CalledForTests.letWind(laptop, attempt);
        String motor = CalledForTests.value(laptop.get("/winding").body(), "data-of=\"([^\"]+)\"");
        String id = laptop.newId();
        var begun =
                laptop.tapAs(id, "wind.begin", content().put("attempt", attempt).put("motor", motor));
        assertEquals("saved", begun.path("state").asText(), begun.toString());
        String wind = id + "-0";
        marks(wind, 5, 5_000);
        phases(wind);
        var released = laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released", "seen", ""));
        assertEquals(200, released.statusCode(), released.body());
        return new HashMap<>(Map.of("attempt", attempt, "wind", wind, "atFull", "", "stop", "100", "backOff", "2"));
    }

    private String attempts() throws Exception {
        return laptop.zip("/export.zip").get("attempts.csv");
    }

    @Test
    void marks_that_come_in_late_tell_the_torques_of_their_attempt() throws Exception {
        Map<String, String> turns = ofAnAttempt();
        assertEquals(200, laptop.form("/winding/count", turns).statusCode());
        assertTrue(attempts().contains("1.765387953556511 N·mm"), attempts());
        saved(
                "wind.mark",
                content().put("wind", turns.get("wind")).put("step", 1).put("elapsedMs", 28_000));
        assertFalse(attempts().contains("1.765387953556511 N·mm"), attempts());
        assertTrue(attempts().contains("2.118465544267813"), "as if it had come in in time: " + attempts());
    }

    @Test
    void a_hold_above_the_peak_stays_out_in_files_that_have_no_marks_until_somebody_confirms_it() throws Exception {
        Map<String, String> turns = ofAnAttempt();
        turns.putAll(Map.of("held", "0.31 at 0:40; 0.30 at 1:20", "unit", "in-ozf"));
        String asked = laptop.form("/winding/count", turns).body();
        turns.put("insist", CalledForTests.value(asked, "name=\"insist\" value=\"([^\"]+)\""));
        String insisted = laptop.form("/winding/count", turns).body();
        assertTrue(attempts().contains("doubted: one reading is asked about"), attempts());
        var so = laptop.form(
                "/winding/reading", Map.of("wind", turns.get("wind"), "mark", doubt(insisted), "word", "so"));
        assertEquals(200, so.statusCode(), so.body());
        assertFalse(attempts().contains("asked about"), attempts());
        assertTrue(attempts().contains("0.31 in-ozf at 0:40 confirmed; 0.30 in-ozf at 1:20"), attempts());
    }

    private void counted(String motor, String wind) throws Exception {
        var saved = laptop.form(
                "/winding/motor/" + motor + "/count",
                Map.of("wind", wind, "atFull", "", "stop", "100", "backOff", "2"));
        assertEquals(200, saved.statusCode(), saved.body());
    }
}
