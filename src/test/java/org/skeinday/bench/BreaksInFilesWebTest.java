package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
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

/** What was read of a hold, and the coach's word on a break, go with the files of the day. */
@Timeout(60)
class BreaksInFilesWebTest {
    private static final String ASKED = "it was asked about where it was read";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String a3;
    private String attempt;
    private String wind;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 186);
        a3 = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", a3))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
        String id = laptop.newId();
        laptop.tapAs(id, "wind.begin", Json.MAPPER.createObjectNode().put("attempt", attempt));
        wind = id + "-0";
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void phase(String phase) throws Exception {
        laptop.tap(
                "wind.phase",
                Json.MAPPER
                        .createObjectNode()
                        .put("wind", wind)
                        .put("phase", phase)
                        .put("elapsedMs", 9000));
    }

    /** What another program says of the motor, once it has taken in all files; and that it writes them as they came. */
    private String elsewhere(String bundle, String tag) throws Exception {
        try (App other = Demo.startEmpty(root.resolve("other"))) {
            Visitor visitor = new Visitor(other.port(), "", 187);
            var taken = visitor.upload("/import/take", "day.json", bundle.getBytes(StandardCharsets.UTF_8), Map.of());
            assertEquals(200, taken.statusCode(), taken.body());
            assertEquals(bundle, visitor.get("/export.json").body());
            String address =
                    new FilledForms(visitor).row("motors", tag).replace("/prepare/motors/row/", "/bench/motor/");
            String page = visitor.get(address).body();
            if (page.contains(ASKED)) {
                String seen = CalledForTests.value(page, "name=\"seen\" value=\"([^\"]*)\"");
                var so = visitor.form(address + "/break", Map.of("so", "yes", "seen", seen));
                assertEquals(200, so.statusCode(), so.body());
                assertFalse(visitor.get(address).body().contains(ASKED), "as it is so");
                String confirmed = visitor.get("/export.json").body();
                assertTrue(confirmed.contains("peak-torque tap confirmed"), confirmed);
            }
            return page;
        }
    }

    /** A motor of batch B that is wound until it breaks, with two marks of the needle at once where they are asked about. */
    private String broken(boolean jumped, String turns, String insist) throws Exception {
        String b1 = new FilledForms(laptop).row("motors", "B1").replaceFirst(".*/", "");
        String id = laptop.newId();
        laptop.tapAs(
                id,
                "wind.alone",
                Json.MAPPER.createObjectNode().put("motor", b1).put("stop", "breaking"));
        wind = id + "-0";
        for (int at : new int[] {4000, jumped ? 4050 : 6000}) {
            laptop.tap(
                    "wind.mark",
                    Json.MAPPER
                            .createObjectNode()
                            .put("wind", wind)
                            .put("step", 1)
                            .put("elapsedMs", at));
        }
        phase("broke");
        var counted = laptop.form(
                "/winding/motor/" + b1 + "/count",
                Map.of("wind", wind, "atFull", "", "stop", turns, "backOff", "", "insist", insist));
        assertEquals(200, counted.statusCode(), counted.body());
        return b1;
    }

    @Test
    void a_break_and_what_the_coach_said_of_it_come_out_and_in_again() throws Exception {
        phase("broke");
        Map<String, String> broke = new HashMap<>(Map.of("attempt", attempt, "motor", a3, "place", "strand"));
        laptop.form("/attempt/people-safe", broke);
        assertEquals(200, laptop.form("/attempt/parted", broke).statusCode());
        String page = laptop.get("/bench/motor/" + a3).body();
        String seen = CalledForTests.value(page, "name=\"seen\" value=\"([^\"]*)\"");
        var judged = laptop.form("/bench/motor/" + a3 + "/break", Map.of("cause", "test", "seen", seen));
        assertEquals(200, judged.statusCode(), judged.body());
        String there = elsewhere(laptop.get("/export.json").body(), "A3");
        assertTrue(there.contains("a break test, from which"), there);
    }

    @Test
    void what_is_asked_of_a_wind_that_broke_is_asked_of_its_break_in_files_until_somebody_confirms_it()
            throws Exception {
        broken(true, "220", "");
        String bundle = laptop.get("/export.json").body();
        assertTrue(bundle.contains("peak-torque tap asked"), bundle);
        String there = elsewhere(bundle, "B1");
        assertTrue(there.contains(ASKED), there);
    }

    @Test
    void turns_of_a_break_that_were_confirmed_are_so_in_files_too_with_who_said_it() throws Exception {
        broken(false, "2200", "turns-beyond-breaking");
        String evening = laptop.get("/evening").body();
        assertTrue(evening.contains("such a motor breaks at about"), evening);
        String asked = evening.substring(evening.lastIndexOf("<form", evening.indexOf("Wind of B1")));
        Map<String, String> so = new HashMap<>(Map.of("wind", wind, "verdict", "so"));
        so.put("seen", CalledForTests.value(asked, "name=\"seen\" value=\"([^\"]*)\""));
        var said = laptop.form("/evening/wind", so);
        assertEquals(200, said.statusCode(), said.body());
        String bundle = laptop.get("/export.json").body();
        assertTrue(bundle.contains("crank-turns typed confirmed"), bundle);
        String there = elsewhere(bundle, "B1");
        assertFalse(there.contains("such a motor breaks at about"), there);
    }

    @Test
    void a_wind_that_was_to_end_with_the_break_makes_it_a_test_in_files_too() throws Exception {
        String b1 = new FilledForms(laptop).row("motors", "B1").replaceFirst(".*/", "");
        String id = laptop.newId();
        laptop.tapAs(
                id,
                "wind.alone",
                Json.MAPPER.createObjectNode().put("motor", b1).put("stop", "breaking"));
        wind = id + "-0";
        phase("broke");
        laptop.form(
                "/winding/motor/" + b1 + "/count", Map.of("wind", wind, "atFull", "", "stop", "220", "backOff", ""));
        assertTrue(laptop.get("/bench/motor/" + b1).body().contains("a break test, from which"), "by its wind alone");
        String there = elsewhere(laptop.get("/export.json").body(), "B1");
        assertTrue(there.contains("a break test, from which"), there);
    }

    @Test
    void what_was_read_of_a_hold_comes_out_and_in_again_as_it_was_typed() throws Exception {
        phase("stopped");
        Map<String, String> counted = new HashMap<>(Map.of("wind", wind, "atFull", "", "stop", "200", "backOff", "2"));
        counted.putAll(Map.of("held", "0.78 at 0:40; 0.76 at 1:30", "unit", "in-ozf"));
        var saved = laptop.form("/winding/count", counted);
        assertEquals(200, saved.statusCode(), saved.body());
        String bundle = laptop.get("/export.json").body();
        assertTrue(bundle.contains("0.78 in-ozf at 0:40; 0.76 in-ozf at 1:30"), bundle);
        elsewhere(bundle, "A3");
    }
}
