package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

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
import org.skeinday.prepare.FilledForms;

/** A file of one event tells of its motors the uses that they had in the record, in a folder that knows nothing else. */
@Timeout(90)
class PartUsesWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 511);
        laptop.form("/practice/begin", Map.of());
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void practised(int times) throws Exception {
        for (int i = 0; i < times; i++) {
            Map<String, String> flight =
                    new HashMap<>(Map.of("model", "Reed One", "motor", "A3", "crank-turns", "200"));
            flight.putAll(Map.of("time", "1:4" + i + ".2", "earlier", "yes", "valid", "yes"));
            var logged = laptop.form("/practice", flight);
            assertEquals(200, logged.statusCode(), logged.body());
        }
    }

    private void keyedIn(int attempt) throws Exception {
        String entry = value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        Map<String, String> card =
                new HashMap<>(Map.of("entry", entry, "attempt", String.valueOf(attempt), "model", "Reed One"));
        card.putAll(Map.of("motor", "A3", "stop-count", "200", "watch-1", "1:43.61", "watch-2", "1:43.72"));
        assertEquals(200, laptop.form("/key-in", card).statusCode());
    }

    private static String use(Visitor at) throws Exception {
        String list = at.get("/winding").body();
        String flight = value(list, "/winding\\?flight=([^\"]+)\"");
        return value(at.get("/evening/flight/" + flight).body(), "(?s)<dt>use</dt>\\s*<dd>(\\d+)<");
    }

    private static String used(Visitor at) throws Exception {
        String row = new FilledForms(at).row("motors", "A3").replaceFirst(".*/", "");
        return value(at.get("/bench/motor/" + row).body(), "used (\\d+) times");
    }

    @Test
    void a_file_of_one_event_says_of_its_flight_the_use_that_it_was_whatever_came_before_and_after_it()
            throws Exception {
        practised(5);
        keyedIn(1);
        practised(2);
        String use = use(laptop);
        String used = used(laptop);
        assertTrue(Integer.parseInt(use) < Integer.parseInt(used), use + " of " + used);
        String event = value(laptop.get("/export").body(), "/export.json(\\?event=[^\"]+)\"");
        byte[] part = laptop.get("/export.json" + event).body().getBytes(StandardCharsets.UTF_8);
        Path folder = root.resolve("other");
        try (App other = Demo.startEmpty(folder)) {
            var there = new Visitor(other.port(), "", 512);
            var taken = there.upload("/import/take", "day.json", part, Map.of());
            assertEquals(200, taken.statusCode(), taken.body());
            assertEquals(use, use(there));
            assertEquals(used, used(there));
            assertEquals(
                    laptop.zip("/export.zip" + event).get("attempts.csv"),
                    there.zip("/export.zip").get("attempts.csv"),
                    "and files of that folder say so again");
        }
    }
}
