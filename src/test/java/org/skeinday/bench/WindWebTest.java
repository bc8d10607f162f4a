package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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

/** The reader's taps and the turns afterwards, as devices send them. */
@Timeout(60)
class WindWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String attempt;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 61);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void call(String tag) throws Exception {
        String motor = new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private String begin(Visitor who) throws Exception {
        String id = who.newId();
        JsonNode answer = who.tapAs(id, "wind.begin", content().put("attempt", attempt));
        assertEquals("saved", answer.path("state").asText(), answer.toString());
        return id + "-0";
    }

    @Test
    void a_motor_that_became_gritty_after_the_call_is_not_wound() throws Exception {
        call("A3");
        String motor = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
        laptop.tap("bench.step", content().put("motor", motor).put("deed", "fall"));
        JsonNode answer = laptop.tap("wind.begin", content().put("attempt", attempt));
        assertTrue(answer.path("reason").asText().contains("wash it with mild soap"), answer.toString());
        String page = laptop.get("/winding").body();
        assertTrue(page.contains("wash it with mild soap") && !page.contains("First crank turn"), page);
    }

    @Test
    void marks_of_an_unknown_wind_and_none_that_are_one_are_refused_in_words() throws Exception {
        call("A3");
        ObjectNode mark = content().put("wind", "nothing").put("step", 1).put("elapsedMs", 10);
        assertTrue(laptop.tap("wind.mark", mark).path("reason").asText().contains("no such wind"));
        String wind = begin(laptop);
        JsonNode two = laptop.tap("wind.mark", mark.deepCopy().put("wind", wind).put("step", 2));
        assertTrue(two.path("reason").asText().contains("must be 1 or -1"), two.toString());
        JsonNode word = laptop.tap(
                "wind.phase",
                content().put("wind", wind).put("phase", "dancing").put("elapsedMs", 5));
        assertEquals("refused", word.path("state").asText());
    }

    @Test
    void turns_that_cannot_be_are_refused_beside_their_field_and_nothing_is_kept() throws Exception {
        call("A3");
        String wind = begin(laptop);
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released", "seen", ""));
        var less = laptop.form("/winding/count", Map.of("wind", wind, "atFull", "210", "stop", "206", "backOff", "2"));
        assertEquals(422, less.statusCode());
        assertTrue(less.body().contains("must not be above those at the last turn"), less.body());
        var none = laptop.form("/winding/count", Map.of("wind", wind, "atFull", "", "stop", "", "backOff", ""));
        assertTrue(none.body().contains("Crank turns at the last turn are needed"), none.body());
        var word = laptop.form("/winding/count", Map.of("wind", wind, "atFull", "", "stop", "many", "backOff", ""));
        assertTrue(word.body().contains("a whole number from 0 to 10000, but were"), word.body());
        assertFalse(laptop.get("/winding").body().contains("Counted."));
        var good = laptop.form("/winding/count", Map.of("wind", wind, "atFull", "", "stop", "206", "backOff", "2,5"));
        assertTrue(good.body().contains("2035 motor turns"), good.body());
    }

    @Test
    void under_none_only_the_reader_sees_the_needle_and_nobody_the_plan() throws Exception {
        new FilledForms(laptop)
                .save(
                        "terms",
                        new FilledForms(laptop).row("terms", "Saltmarsh Rotor Day"),
                        Map.of("outside-help", "none"));
        call("A3");
        Visitor reader = Demo.joined(app, "helper", "", 62);
        String wind = begin(reader);
        reader.tap("wind.mark", content().put("wind", wind).put("step", 1).put("elapsedMs", 1000));
        String others = laptop.get("/winding").body();
        assertTrue(others.contains("Outside help is not allowed"), others);
        String own = reader.get("/winding").body();
        assertTrue(own.contains("+1 division"), own);
        for (String page : new String[] {others, own}) {
            for (String advice : new String[] {"hook to hook", "turns limit", "data-target=\"2"}) {
                assertFalse(page.contains(advice), advice + " in " + page);
            }
        }
    }
}
