package org.skeinday.prepare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;

/** What the demo's coach takes out. */
class ExportWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 61);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    @Test
    void an_event_comes_out_alone_in_three_forms() throws Exception {
        String page = laptop.get("/export").body();
        String event = CalledForTests.value(page, "/export.json(\\?event=[^\"]+)\"");
        JsonNode json = Json.MAPPER.readTree(laptop.get("/export.json" + event).body());
        assertEquals(
                1, json.path("tables").path("event").size(), json.path("about").asText());
        assertTrue(json.path("tables").path("entries").size() > 1, "its entries");
        assertEquals(
                2, laptop.zip("/export.zip" + event).get("event.csv").lines().count());
        try (var book = new XSSFWorkbook(new ByteArrayInputStream(laptop.bytes("/export.xlsx" + event)))) {
            assertEquals(1, book.getSheet("event").getLastRowNum());
        }
        assertEquals(404, laptop.get("/export.json?event=none").statusCode());
        assertEquals(422, laptop.get("/export.json?season=summer").statusCode());
    }

    @Test
    void a_season_has_its_flights_and_everything_has_more() throws Exception {
        String season = CalledForTests.value(laptop.get("/export").body(), "/export.json(\\?season=[^\"]+)\"");
        JsonNode part = Json.MAPPER.readTree(laptop.get("/export.json" + season).body());
        JsonNode all = Json.MAPPER.readTree(laptop.get("/export.json").body());
        assertTrue(
                part.path("about").asText().startsWith("season "),
                part.path("about").asText());
        assertTrue(part.path("tables").path("flights").size() > 0, "its practice");
        assertEquals("the whole record", all.path("about").asText());
        assertEquals(1, all.path("version").asInt());
    }

    @Test
    void attempts_come_out_with_what_they_were_timed_by_and_each_motor_with_its_uses() throws Exception {
        String keyIn = laptop.get("/key-in").body();
        var card = new HashMap<>(Map.of(
                "entry",
                CalledForTests.value(keyIn, "<option value=\"([^\"]+)\"[^>]*>Curlew</option>"),
                "attempt",
                "1",
                "model",
                "Reed One",
                "motor",
                "A4",
                "stop-count",
                "201",
                "watch-1",
                "1:43.61",
                "watch-2",
                "1:43.72"));
        assertEquals(200, laptop.form("/key-in", card).statusCode());
        String event = CalledForTests.value(laptop.get("/export").body(), "/export.zip(\\?event=[^\"]+)\"");
        assertEquals(4, usesOnBench("A4"), "three at practice, one on a card");
        for (Map.Entry<String, String> untold : Map.of("", "0", event, "3").entrySet()) {
            Map<String, String> files = laptop.zip("/export.zip" + untold.getKey());
            assertTrue(files.get("attempts.csv").contains("A4"), files.get("attempts.csv"));
            assertEquals(3, files.get("readings.csv").lines().count());
            assertEquals(untold.getValue(), cell(files.get("motors.csv"), "A4", "uses"), untold.getKey());
        }
    }

    @Test
    void every_part_that_is_taken_in_elsewhere_says_as_many_uses_as_the_bench_it_comes_from() throws Exception {
        String entry =
                CalledForTests.value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        Map<String, String> card = new HashMap<>(Map.of("entry", entry, "attempt", "1", "model", "Reed One"));
        card.putAll(Map.of("motor", "A4", "stop-count", "201", "watch-1", "1:43.61", "watch-2", "1:43.72"));
        assertEquals(200, laptop.form("/key-in", card).statusCode());
        Map<String, String> parts = new LinkedHashMap<>(Map.of("everything", ""));
        String page = laptop.get("/export").body();
        parts.put("an event", CalledForTests.value(page, "/export.json(\\?event=[^\"]+)\""));
        parts.put("a season", CalledForTests.value(page, "/export.json(\\?season=[^\"]+)\""));
        parts.put("motors only", motorsOnly());
        int uses = usesOnBench("A4");
        for (Map.Entry<String, String> part : parts.entrySet()) {
            byte[] bundle = laptop.get("/export.json" + part.getValue()).body().getBytes(StandardCharsets.UTF_8);
            try (App other = Demo.startEmpty(root.resolve(part.getKey()))) {
                Visitor elsewhere = new Visitor(other.port(), "", 63);
                var taken = elsewhere.upload("/import/take", "part.json", bundle, Map.of());
                assertEquals(200, taken.statusCode(), taken.body());
                assertEquals(uses, usesOnBench(elsewhere, "A4"), part.getKey());
            }
        }
        assertEquals(4, uses, "three at practice, one on a card");
    }

    /** An event at which nothing was flown yet, with an entry that has declared its motor. */
    private String motorsOnly() throws Exception {
        var forms = new FilledForms(laptop);
        forms.add("events", Map.of("name", "Second Rotor Day", "day", "2030-05-09", "kind", "hosting"));
        forms.add("entries", Map.of("event", "Second Rotor Day", "entry", "Wigeon", "team", "Reed", "motors", "A4"));
        return CalledForTests.value(
                laptop.get("/export").body(), "(?s)Second Rotor Day.*?/export.json(\\?event=[^\"]+)\"");
    }

    private int usesOnBench(String tag) throws Exception {
        return usesOnBench(laptop, tag);
    }

    private static int usesOnBench(Visitor who, String tag) throws Exception {
        String said = CalledForTests.value(
                who.get("/bench").body(), "(?s)>" + tag + "<.{0,600}?(not used yet|used \\d+ times?)");
        return said.startsWith("not") ? 0 : Integer.parseInt(said.replaceAll("\\D", ""));
    }

    private static String cell(String csv, String tag, String column) {
        List<String> lines = csv.lines().toList();
        int at = List.of(lines.get(0).split(",")).indexOf(column);
        return lines.stream()
                .filter(line -> line.startsWith(tag + ","))
                .findFirst()
                .orElseThrow()
                .split(",", -1)[at];
    }

    @Test
    void every_table_comes_out_for_the_coach_without_what_opens_a_session() throws Exception {
        Visitor captain = Demo.joined(app, "captain", "", 62);
        assertEquals(403, captain.get("/tables.zip").statusCode());
        Map<String, String> tables = laptop.zip("/tables.zip");
        assertTrue(tables.size() > 40, "but were " + tables.keySet());
        assertTrue(tables.get("motor.csv").startsWith("id,tag,"), tables.get("motor.csv"));
        assertTrue(tables.get("motor.csv").contains("loop (mm)"), tables.get("motor.csv"));
        assertTrue(tables.get("device.csv").lines().count() > 1, "the captain's device");
        assertFalse(tables.get("device.csv").matches("(?s).*(token|hash).*"), tables.get("device.csv"));
        try (var book = new XSSFWorkbook(new ByteArrayInputStream(laptop.bytes("/tables.xlsx")))) {
            assertEquals(tables.size(), book.getNumberOfSheets());
        }
    }

    @Test
    void the_schema_is_there_to_be_read() throws Exception {
        assertTrue(laptop.get("/bundle.schema.json").body().contains("draft/2020-12"));
    }
}
