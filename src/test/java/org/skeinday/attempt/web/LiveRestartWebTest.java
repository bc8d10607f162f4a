package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** In each phase the program ends and its database is lost: built anew from the journal it says the same. */
@Timeout(300)
class LiveRestartWebTest {
    @TempDir
    Path root;

    private App app;
    /** Each device makes ids of its own. */
    private long seed = 9_500;

    private Visitor laptop;
    private String attempt;
    private String title;

    @Test
    void after_a_start_in_any_phase_every_page_has_the_same_phase_and_the_same_numbers() throws Exception {
        open();
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor("A3")))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        title = CalledForTests.value(called, "<h1>([^<]+?) <");
        CalledForTests.letWind(laptop, attempt);
        same("called");
        String id = laptop.newId();
        laptop.tapAs(id, "wind.begin", content().put("attempt", attempt).put("motor", motor("A3")));
        same("winding");
        laptop.tap("wind.phase", phase(id, "broke", 40_000));
        same("broke");
        Map<String, String> broke = Map.of("attempt", attempt, "motor", motor("A3"), "place", "hook");
        laptop.form("/attempt/people-safe", broke);
        laptop.form("/attempt/parted", broke);
        same("broke");
        laptop.form("/attempt/take-motor", Map.of("attempt", attempt, "motor", motor("B2"), "seenMotor", motor("A3")));
        same("called");
        CalledForTests.lookAgain(laptop, attempt);
        String second = laptop.newId();
        laptop.tapAs(second, "wind.begin", content().put("attempt", attempt).put("motor", motor("B2")));
        same("winding, 2nd");
        laptop.tap("wind.phase", phase(second, "stopped", 50_000));
        same("holding");
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released"));
        same("in the air");
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "landed"));
        same("landed");
        for (String slot : List.of("1", "2")) {
            laptop.form("/attempt/type-time", Map.of("attempt", attempt, "typed-slot", slot, "typed", "1:01.6" + slot));
        }
        laptop.form("/attempt/close", Map.of("attempt", attempt, "why", "both asked"));
        same("provisional");
        String seen = CalledForTests.value(laptop.get("/attempt/" + attempt).body(), "name=\"seen\" value=\"(\\d+)\"");
        for (String as : List.of("captain", "watch-1", "watch-2")) {
            laptop.form("/attempt/" + attempt + "/sign", Map.of("as", as, "seen", seen, "pin", Demo.PIN));
        }
        same("signed");
        app.close();
    }

    @Test
    void turns_that_are_still_on_are_asked_for_after_a_start_too() throws Exception {
        open();
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor("A3")))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        title = CalledForTests.value(called, "<h1>([^<]+?) <");
        CalledForTests.letWind(laptop, attempt);
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding"));
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "a rib broke"));
        same("to be run back");
        assertTrue(laptop.get("/bench").body().contains("Run it back: how many turns are on?"));
        laptop.form("/attempt/run-back", Map.of("attempt", attempt, "motor", motor("A3"), "turns", "30"));
        same("abandoned");
        app.close();
    }

    private void open() throws IOException {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", seed);
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private static ObjectNode phase(String wind, String phase, long ms) {
        return content().put("wind", wind + "-0").put("phase", phase).put("elapsedMs", ms);
    }

    /** Before the start and after it. */
    private void same(String phase) throws Exception {
        LiveFigures before = LiveFigures.of(laptop, attempt, title);
        assertEquals(
                List.of(phase),
                before.all().get("phase").values().stream().distinct().toList(),
                before.toString());
        app.close();
        loseTheDatabase();
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", ++seed);
        assertEquals(before.all(), LiveFigures.of(laptop, attempt, title).all());
    }

    private void loseTheDatabase() throws IOException {
        try (Stream<Path> files = Files.list(root.resolve("day"))) {
            List<Path> lost = files.filter(f -> f.getFileName().toString().contains(".mv.db"))
                    .toList();
            assertEquals(1, lost.size(), lost.toString());
            Files.delete(lost.get(0));
        }
    }
}
