package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
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

/** One laptop has two watches, of one attempt or of two: its page says both, and each is told what it needs. */
@Timeout(120)
class TwoWatchesWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private final List<String> attempts = new ArrayList<>();

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 93);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void call(String name) throws Exception {
        String entry = CalledForTests.value(
                laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>" + name + "</option>");
        taken("/attempt/call", Map.of("entry", entry));
        Pattern.compile("href=\"/attempt/([^\"]+)\"|name=\"attempt\" value=\"([^\"]+)\"")
                .matcher(laptop.get("/now").body() + laptop.get("/day/part").body())
                .results()
                .map(found -> found.group(1) == null ? found.group(2) : found.group(1))
                .filter(id -> !attempts.contains(id))
                .findFirst()
                .ifPresent(attempts::add);
    }

    private void taken(String address, Map<String, String> fields) throws Exception {
        var answer = laptop.form(address, fields);
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private void take(int attempt, String slot) throws Exception {
        taken("/watch/take", Map.of("attempt", attempts.get(attempt), "slot", slot));
    }

    private String timing(int attempt, String slot) throws Exception {
        return laptop.get("/timing/part?attempt=" + attempts.get(attempt) + "&slot=" + slot)
                .body();
    }

    private static void says(String page, String words) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    @Test
    void both_watches_of_one_attempt_stand_on_the_page_and_each_is_one_tap_away() throws Exception {
        call("Curlew");
        take(0, "1");
        assertFalse(timing(0, "1").contains("This device is also"), "one watch");
        take(0, "2");
        String first = timing(0, "1");
        says(first, "data-slot=\"1\"");
        says(first, "watch 2 of Curlew, attempt 1: called");
        says(first, "data-refetch-as=\"/timing/part?attempt=" + attempts.get(0));
        String second = timing(0, "2");
        says(second, "data-slot=\"2\"");
        says(second, "watch 1 of Curlew, attempt 1: called");
        says(laptop.get("/timing/part").body(), "data-slot=\"1\"");
        taken("/attempt/move", Map.of("attempt", attempts.get(0), "to", "released"));
        landing(0, 1, 61_610);
        says(timing(0, "1"), "Saved: 1:01.61");
        says(timing(0, "1"), "watch 2 of Curlew, attempt 1: landed");
        assertFalse(timing(0, "2").contains("Saved: 1:01"), "the other has none yet");
        landing(0, 2, 61_650);
        taken("/attempt/close", Map.of("attempt", attempts.get(0), "why", "both asked"));
        says(timing(0, "1"), "Sign for watch 1");
        says(laptop.get("/attempt/" + attempts.get(0)).body(), "watch 2");
    }

    private void landing(int attempt, int slot, int ms) throws Exception {
        var tap = Json.MAPPER
                .createObjectNode()
                .put("attempt", attempts.get(attempt))
                .put("slot", slot)
                .put("ms", ms);
        assertEquals("saved", laptop.tap("watch.landing", tap).path("state").asText());
    }

    @Test
    void watches_of_two_attempts_that_fly_at_once_are_both_said_and_the_chosen_one_stays() throws Exception {
        call("Curlew");
        take(0, "1");
        taken("/attempt/move", Map.of("attempt", attempts.get(0), "to", "released"));
        call("Avocet");
        assertEquals(2, attempts.size(), attempts.toString());
        take(1, "1");
        taken("/attempt/move", Map.of("attempt", attempts.get(1), "to", "released"));
        says(timing(0, "1"), "watch 1 of Avocet, attempt 1: in the air");
        says(timing(1, "1"), "data-attempt=\"" + attempts.get(1) + "\"");
        says(timing(1, "1"), "watch 1 of Curlew, attempt 1: in the air");
    }
}
