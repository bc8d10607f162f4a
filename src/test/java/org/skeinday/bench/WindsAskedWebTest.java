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

/** What a form only proposed of a wind, and marks above the batch's band, wait for a word in Evening. */
@Timeout(60)
class WindsAskedWebTest {
    private static final String ABOVE = "Marks are far above the band of the batch";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 187);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    private static ObjectNode of(String wind) {
        return Json.MAPPER.createObjectNode().put("wind", wind);
    }

    private void phase(String wind, String phase, long ms) throws Exception {
        var answer = laptop.tap("wind.phase", of(wind).put("phase", phase).put("elapsedMs", ms));
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    /** A wind outside any attempt whose needle goes up by a mark each so many seconds. */
    private String wound(String motor, int marks, int seconds) throws Exception {
        String id = laptop.newId();
        var begun = laptop.tapAs(
                id,
                "wind.alone",
                Json.MAPPER.createObjectNode().put("motor", motor).put("stop", "count"));
        assertEquals("saved", begun.path("state").asText(), begun.toString());
        String wind = id + "-0";
        for (int i = 1; i <= marks; i++) {
            laptop.tap("wind.mark", of(wind).put("step", 1).put("elapsedMs", 1000L * seconds * i));
        }
        phase(wind, "stopped", 30_000);
        phase(wind, "backed-off", 33_000);
        return wind;
    }

    private String counted(String motor, Map<String, String> turns) throws Exception {
        var saved = laptop.form("/winding/motor/" + motor + "/count", turns);
        assertEquals(200, saved.statusCode(), saved.body());
        return saved.body();
    }

    private void so(String wind, String title) throws Exception {
        String evening = laptop.get("/evening").body();
        String asked = evening.substring(evening.lastIndexOf("<form", evening.indexOf(title)));
        Map<String, String> word = new HashMap<>(Map.of("wind", wind, "verdict", "so"));
        word.put("seen", CalledForTests.value(asked, "name=\"seen\" value=\"([^\"]*)\""));
        var said = laptop.form("/evening/wind", word);
        assertEquals(200, said.statusCode(), said.body());
    }

    @Test
    void a_back_off_that_the_form_filled_in_is_offered_until_somebody_says_that_it_was_so() throws Exception {
        String b1 = motor("B1");
        String wind = wound(b1, 4, 5);
        phase(wind, "off-meter", 40_000);
        String form = laptop.get("/winding/motor/" + b1).body();
        assertTrue(form.contains("What stands here was counted"), form);
        String backOff = CalledForTests.value(form, "name=\"offered-backOff\" value=\"([^\"]+)\"");
        Map<String, String> turns = new HashMap<>(Map.of("wind", wind, "atFull", "", "stop", "100"));
        turns.putAll(Map.of("backOff", backOff, "offered-backOff", backOff));
        counted(b1, turns);
        String offered = "offered, not measured: back-off " + backOff;
        assertTrue(
                laptop.get("/evening").body().contains(offered),
                laptop.get("/evening").body());
        counted(b1, Map.of("wind", wind, "atFull", "", "stop", "100", "backOff", backOff));
        assertTrue(laptop.get("/evening").body().contains(offered), "sent back as it stands");
        so(wind, "Wind of B1");
        assertFalse(laptop.get("/evening").body().contains("offered, not measured: back-off"));
        turns.put("so", "yes");
        turns.putAll(Map.of("backOff", "9", "offered-backOff", "9"));
        counted(b1, turns);
        assertFalse(laptop.get("/evening").body().contains("offered, not measured: back-off"), "counted, as ticked");
    }

    @Test
    void marks_above_the_band_of_the_batch_wait_for_a_word_in_evening_and_on_no_page_once_it_is_said()
            throws Exception {
        for (String tag : new String[] {"B1", "B2", "B3"}) {
            String wind = wound(motor(tag), 5, 5);
            phase(wind, "off-meter", 40_000);
            counted(motor(tag), Map.of("wind", wind, "atFull", "", "stop", "100", "backOff", "2"));
        }
        assertFalse(laptop.get("/evening").body().contains(ABOVE), "no band before three winds");
        String b5 = motor("B5");
        String wind = wound(b5, 10, 1);
        phase(wind, "off-meter", 40_000);
        String after = counted(b5, Map.of("wind", wind, "atFull", "", "stop", "100", "backOff", "2"));
        assertTrue(laptop.get("/evening").body().contains(ABOVE), after);
        so(wind, "Wind of B5");
        assertFalse(laptop.get("/evening").body().contains(ABOVE), "it was so");
        assertFalse(laptop.get("/winding/motor/" + b5).body().contains("above the batch"), "asked once");
    }
}
