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

/** Who speaks to the winder, and which way the crank is turned so that the hook turns as it must. */
@Timeout(60)
class WindSaysWebTest {
    private static final String PLACE = "Table by the door";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private FilledForms forms;
    private String entry;
    private String motor;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 74);
        forms = new FilledForms(laptop);
        motor = forms.row("motors", "A3").replaceFirst(".*/", "");
        entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private static void says(String words, String html) {
        assertTrue(html.contains(words), words + " in " + html);
    }

    private String call() throws Exception {
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        String attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
        return attempt;
    }

    private String person(String hand, String name) throws Exception {
        return CalledForTests.value(
                laptop.get("/now").body(),
                "(?s)name=\"hand-" + hand + "\">.*?<option value=\"([^\"]+)\"[^>]*>" + name + "<");
    }

    private void name(Map<String, String> hands) throws Exception {
        var form = new java.util.HashMap<>(Map.of("entry", entry));
        form.put("number", CalledForTests.value(laptop.get("/now").body(), "name=\"number\" value=\"([^\"]+)\""));
        form.putAll(hands);
        var named = laptop.form("/attempt/name-hands", form);
        assertEquals(200, named.statusCode(), named.body());
    }

    @Test
    void only_the_reader_who_is_named_speaks_to_the_winder_who_is_named() throws Exception {
        String attempt = call();
        name(Map.of("hand-reads", person("reads", "Ayla"), "hand-winds", person("winds", "Tomek")));
        String both = "Only Ayla speaks to Tomek. Anyone may say stop.";
        says(both, laptop.get("/winding/part").body());
        Visitor reader = Demo.joined(app, "helper", "", 75);
        ObjectNode begin = content().put("attempt", attempt).put("motor", motor);
        assertEquals("saved", reader.tap("wind.begin", begin).path("state").asText());
        says(both, reader.get("/winding/part").body());
        says(both, laptop.get("/winding/part").body());
    }

    @Test
    void where_nobody_is_named_the_sentence_says_the_reader_and_the_winder() throws Exception {
        String alone = laptop.get("/winding/motor/" + forms.row("motors", "B1").replaceFirst(".*/", ""))
                .body();
        says("Only the reader speaks to the winder. Anyone may say stop.", alone);
    }

    @Test
    void the_crank_goes_against_the_hook_where_somebody_has_seen_the_gears_turn_it_around() throws Exception {
        call();
        for (String address : new String[] {"/winding/part", "/now"}) {
            says("anticlockwise", laptop.get(address).body());
        }
        String page = laptop.get("/winding/part").body();
        says("turn the crank anticlockwise: the hook turns clockwise.", page);
        says("hook turns against its crank, one marked turn 2026-05-01, Ayla.", page);
        assertFalse(page.contains("Nobody has seen which way"), page);
    }

    @Test
    void a_winder_that_nobody_has_watched_is_a_caution_that_one_marked_turn_ends() throws Exception {
        var forgotten = Map.of("output-turns", "unknown", "output-checked", "", "output-checked-by", "");
        forms.save("stations", forms.row("stations", PLACE), forgotten);
        says("does it turn with or against it?", laptop.get("/prepare/stations").body());
        call();
        String page = laptop.get("/winding/part").body();
        says("Nobody has seen which way this winder's hook turns.", page);
        says("First crank turn", page); // a caution stops nobody
        String station = CalledForTests.value(page, "data-station=\"([^\"]+)\"");
        JsonNode wrong =
                laptop.tap("station.output", content().put("station", station).put("turns", "round"));
        says("with, against, but was 'round'", wrong.toString());
        JsonNode none =
                laptop.tap("station.output", content().put("station", "none").put("turns", "with"));
        says("no such winding place", none.toString());
        Visitor helper = Demo.joined(app, "helper", "Ines", 76);
        JsonNode seen =
                helper.tap("station.output", content().put("station", station).put("turns", "with"));
        assertEquals("saved", seen.path("state").asText(), seen.toString());
        String after = laptop.get("/winding/part").body();
        says("turn the crank clockwise: the hook turns clockwise.", after);
        assertFalse(after.contains("Nobody has seen"), after);
        String file = laptop.zip("/export.zip").get("stations.csv");
        assertTrue(file.contains("output turns,output checked,output checked by"), file);
        assertTrue(file.lines().anyMatch(line -> line.startsWith(PLACE) && line.contains(",with,")), file);
    }
}
