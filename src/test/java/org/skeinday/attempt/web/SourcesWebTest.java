package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.LinkedHashMap;
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
import org.skeinday.browser.SteppedClock;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Every way in writes where a number came from, and files carry that and who confirmed it. */
@Timeout(90)
class SourcesWebTest {
    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private Visitor one;
    private Visitor two;
    private String attempt;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        laptop = new Visitor(app.port(), "", 91);
        new FilledForms(laptop).window("Curlew", clock, 0, 10);
        CalledForTests.callOnly(laptop);
        attempt = CalledForTests.letWind(laptop);
        one = Demo.joined(app, "timekeeper", "", 92);
        two = Demo.joined(app, "timekeeper", "", 93);
        one.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        two.form("/watch/take", Map.of("attempt", attempt, "slot", "2"));
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void tap(Visitor who, String kind, int slot, Integer ms) throws Exception {
        ObjectNode content = Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put("slot", slot)
                .put("serverMs", clock.millis())
                .put("boundMs", 5);
        if (ms != null) {
            content.put("ms", ms);
        }
        assertEquals("saved", who.tap(kind, content).path("state").asText(), kind);
    }

    private void flyTimedBy(Visitor... watches) throws Exception {
        int slot = 1;
        for (Visitor watch : watches) {
            tap(watch, "watch.release", slot++, null);
        }
        clock.stepBy(Duration.ofMillis(61_000));
        slot = 1;
        for (Visitor watch : watches) {
            tap(watch, "watch.landing", slot++, 61_000);
        }
    }

    private void close() throws Exception {
        var closed = laptop.form("/attempt/close", Map.of("attempt", attempt, "why", "so it was"));
        assertEquals(200, closed.statusCode(), closed.body());
    }

    /** What Evening says of where the flight's numbers came from. */
    private String source() throws Exception {
        return sourceOf(attempt);
    }

    private String sourceOf(String flight) throws Exception {
        String page = laptop.get("/evening/flight/" + flight).body();
        return value(page, "<dt>source</dt><dd>([^<]*)</dd>");
    }

    private void told(Map<String, String> numbers) throws Exception {
        Map<String, String> form = new HashMap<>(Map.of("attempt", attempt, "spoilt", "", "contact", ""));
        form.putAll(numbers);
        var told = laptop.form("/winding/landed", form);
        assertEquals(200, told.statusCode(), told.body());
    }

    private Map<String, String> season() throws Exception {
        return laptop.zip("/export.zip");
    }

    private static List<Map<String, String>> rows(String csv) {
        List<String> lines = csv.lines().toList();
        String[] head = lines.get(0).split(",", -1);
        return lines.stream()
                .skip(1)
                .map(line -> {
                    String[] cells = line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1);
                    Map<String, String> row = new LinkedHashMap<>();
                    for (int i = 0; i < head.length; i++) {
                        row.put(head[i].replaceAll("^\\W", ""), cells[i]);
                    }
                    return row;
                })
                .toList();
    }

    @Test
    void what_our_watches_tapped_is_tapped_and_what_a_hand_watch_had_a_part_in_is_typed() throws Exception {
        flyTimedBy(one, two);
        assertEquals("typed; time tapped", source(), "our own watch, before there is an official time");
        close();
        assertEquals("typed; time tapped", source(), "and the time that was made of both");
        told(Map.of("remaining", "20"));
        assertEquals("typed; time tapped", source());
        String numbers = rows(season().get("attempts.csv")).stream()
                .map(row -> row.get("source") + ": " + row.get("numbers"))
                .filter(text -> text.contains("tap"))
                .reduce("", String::concat);
        assertTrue(numbers.contains("time tap"), "a file says it, read without the readings too: " + numbers);
    }

    @Test
    void a_time_of_one_tapped_and_one_typed_watch_is_typed() throws Exception {
        flyTimedBy(one);
        laptop.form("/attempt/type-time", Map.of("attempt", attempt, "typed-slot", "2", "typed", "1:01.10"));
        close();
        assertEquals("typed", source());
    }

    @Test
    void what_is_typed_into_a_flight_of_a_card_is_typed_and_the_rest_stays_of_the_card() throws Exception {
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released"));
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "landed"));
        told(Map.of("remaining", "31"));
        String entry = value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        String motor = laptop.get("/attempt/" + attempt).body().contains("A1") ? "A1" : "A3";
        Map<String, String> card = new HashMap<>(Map.of("entry", entry, "attempt", "1", "model", "Reed One"));
        card.putAll(Map.of("motor", motor, "stop-count", "201", "peak-torque", "0.62 in-ozf", "back-off", "3"));
        card.putAll(Map.of("launch-torque", "0.41 in-ozf", "watch-1", "1:43.61", "watch-2", "1:43.72"));
        var keyed = laptop.form("/key-in", card);
        assertEquals(200, keyed.statusCode(), keyed.body());
        assertEquals("from a card; turns remaining typed", source(), "known before the card");
        told(Map.of("remaining", "32"));
        assertEquals("from a card; turns remaining typed", source(), "typed after it");
    }

    @Test
    void confirmations_go_with_their_numbers_through_files_taken_in_twice_and_corrected_between() throws Exception {
        flyTimedBy(one);
        String own = "time=61000.0";
        var so = laptop.form("/evening/flight/" + attempt + "/so", Map.of("number", own));
        assertEquals(200, so.statusCode(), so.body());
        assertEquals("typed; time tapped and confirmed", source());
        String first = laptop.get("/export.json").body();
        assertTrue(first.contains("time=1:01.00 tap confirmed"), first);
        List<String> second = takenInto(root.resolve("second"), first);
        assertEquals(first, second.get(0));
        assertFalse(second.get(1).contains("time=1:0"), "a time that was typed since was not confirmed");
        assertEquals(first, takenInto(root.resolve("third"), second.get(0)).get(0));
    }

    /** Taken in by another program in an empty folder; what it writes then, and once the time was typed anew. */
    private List<String> takenInto(Path folder, String bundle) throws Exception {
        try (App other = Demo.startEmpty(folder, clock)) {
            Visitor visitor = new Visitor(other.port(), "", 94);
            byte[] bytes = bundle.getBytes(StandardCharsets.UTF_8);
            var taken = visitor.upload("/import/take", "season.json", bytes, Map.of());
            assertEquals(200, taken.statusCode(), taken.body());
            String once = visitor.get("/export.json").body();
            assertEquals(
                    422,
                    visitor.upload("/import/take", "season.json", bytes, Map.of())
                            .statusCode(),
                    "twice");
            assertEquals(once, visitor.get("/export.json").body());
            clock.stepBy(Duration.ofSeconds(10));
            String there = value(visitor.get("/now").body(), "name=\"attempt\" value=\"([^\"]+)\"");
            var typed =
                    visitor.form("/attempt/type-time", Map.of("attempt", there, "typed-slot", "1", "typed", "1:02.00"));
            assertEquals(200, typed.statusCode(), typed.body());
            return List.of(once, visitor.get("/export.json").body());
        }
    }
}
