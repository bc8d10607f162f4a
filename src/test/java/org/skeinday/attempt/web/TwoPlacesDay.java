package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** A day with two winding places, each with its meter and its winder, and two own entries that are called. */
abstract class TwoPlacesDay {
    static final String TABLE = "Table by the door · wire meter 1, division 0.05 in-ozf · winder 10 to 1";
    static final String POST = "Spare post · dial 2, division 0.02 in-ozf · winder 20 to 1";

    @TempDir
    Path root;

    App app;
    Visitor laptop;
    Visitor reader;
    private long seed = 7_100;
    Side curlew;
    Side avocet;

    record Side(String attempt, String title) {}

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", seed);
        reader = Demo.joined(app, "helper", "", seed + 50);
        describePost();
        curlew = called("Curlew");
        avocet = called("Avocet");
    }

    /** The second place gets a meter and a winder of its own; without that it has neither. */
    void describePost() throws Exception {
        Map<String, String> post = Map.of(
                "winder-ratio", "20",
                "ratio-checked", "2026-05-02",
                "meter", "dial 2",
                "division", "0.02 in-ozf",
                "full-scale", "0.5 in-ozf",
                "output-turns", "with",
                "output-checked", "2026-05-02");
        var forms = new FilledForms(laptop);
        var prepared = forms.save("stations", forms.row("stations", "Spare post"), post);
        assertEquals(204, prepared.statusCode(), prepared.body());
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    Side called(String entry) throws Exception {
        return called(entry, 1);
    }

    /** @param running which attempt of the entry it is, also of those that use up no number */
    Side called(String entry, int running) throws Exception {
        String act = laptop.newId();
        var sent = laptop.form(
                "/attempt/call",
                Map.of("act", act, "entry", entry(entry), "number", String.valueOf(running), "assigned", "yes"));
        assertEquals(200, sent.statusCode(), sent.body());
        String attempt = act + "-0";
        laptop.form("/winding/aim", Map.of("attempt", attempt, "launch", "0.2", "ceiling", "0.3", "unit", "in-ozf"));
        return new Side(attempt, entry + ", attempt 1");
    }

    String entry(String name) throws Exception {
        return new FilledForms(laptop).row("entries", name).replaceFirst(".*/", "");
    }

    String place(String name) throws Exception {
        return new FilledForms(laptop).row("stations", name).replaceFirst(".*/", "");
    }

    /** Where Now says that it is wound. */
    String woundAt(Side side) throws Exception {
        return value(laptop.get("/now?attempt=" + side.attempt()).body(), "<dt>wound at</dt><dd>([^<]+)<");
    }

    void says(String words, String page) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    void saysNot(String words, String page) {
        assertFalse(page.contains(words), words + " in " + page);
    }

    /** As the reader's device has it: limits, marks and which way to crank. */
    String keys(Side side) throws Exception {
        return reader.get("/winding/part?flight=" + side.attempt()).body();
    }

    static ObjectNode about(Side side) {
        return Json.MAPPER.createObjectNode().put("attempt", side.attempt());
    }

    String begin(Side side) throws Exception {
        return begin(reader, side);
    }

    String begin(Visitor who, Side side) throws Exception {
        CalledForTests.letWind(laptop, side.attempt());
        String keys = keys(side);
        String id = who.newId();
        saved(who.tapAs(
                id,
                "wind.begin",
                about(side)
                        .put("motor", value(keys, "data-of=\"([^\"]+)\""))
                        .put("station", value(keys, "data-station=\"([^\"]+)\""))));
        return id + "-0";
    }

    void stopped(String wind) throws Exception {
        saved(reader.tap(
                "wind.phase",
                Json.MAPPER
                        .createObjectNode()
                        .put("wind", wind)
                        .put("phase", "stopped")
                        .put("elapsedMs", 60_000)));
    }

    static void saved(JsonNode answer) {
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    JsonNode choose(Side side, String name) throws Exception {
        return reader.tap("attempt.station", about(side).put("station", place(name)));
    }

    /** The program ends, its database is lost, and it starts from the journal. */
    void fromTheJournal() throws Exception {
        app.close();
        try (Stream<Path> files = Files.list(root.resolve("day"))) {
            for (Path file : files.filter(f -> f.toString().contains(".mv.db")).toList()) {
                Files.delete(file);
            }
        }
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", ++seed);
        reader = Demo.joined(app, "helper", "", seed + 500);
    }
}
