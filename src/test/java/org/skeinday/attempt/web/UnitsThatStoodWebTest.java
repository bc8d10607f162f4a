package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Torques are in the unit of the meter at hand, and a bare number in the unit that stood under its field. */
@Timeout(90)
class UnitsThatStoodWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private FilledForms forms;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 171);
        forms = new FilledForms(laptop);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void meter(String place, String name, String division, String scale) throws Exception {
        var saved = forms.save(
                "stations",
                forms.row("stations", place),
                Map.of("meter", name, "division", division, "full-scale", scale, "winder-ratio", "10"));
        assertEquals(204, saved.statusCode(), saved.body());
    }

    private String called(String entry) throws Exception {
        String id = forms.row("entries", entry).replaceFirst(".*/", "");
        String now = laptop.form("/attempt/call", Map.of("entry", id, "number", "1", "assigned", "yes"))
                .body();
        return now.contains("<h1>" + entry)
                ? value(now, "name=\"attempt\" value=\"([^\"]+)\"")
                : value(now, "(?s)<b>" + entry + "</b>.*?/\\?attempt=([^\"]+)\"");
    }

    private void choose(String attempt, String place) throws Exception {
        String station = forms.row("stations", place).replaceFirst(".*/", "");
        ObjectNode choice =
                Json.MAPPER.createObjectNode().put("attempt", attempt).put("station", station);
        JsonNode chosen = laptop.tap("attempt.station", choice);
        assertEquals("saved", chosen.path("state").asText(), chosen.toString());
    }

    private String winding(String attempt) throws Exception {
        return laptop.get("/winding?flight=" + attempt).body();
    }

    private static Map<String, String> form(String page, String path) {
        return Arrays.stream(FilledForms.posted(page, path).split("&"))
                .map(pair -> pair.split("=", 2))
                .collect(Collectors.toMap(
                        pair -> pair[0], pair -> URLDecoder.decode(pair[1], StandardCharsets.UTF_8), (a, b) -> b));
    }

    @Test
    void each_attempt_has_the_units_of_the_meter_at_its_own_place_also_when_that_meter_is_swapped() throws Exception {
        meter("Spare post", "dial 2", "0.2 mN-m", "5 mN-m");
        String curlew = called("Curlew");
        String avocet = called("Avocet");
        choose(curlew, "Table by the door");
        choose(avocet, "Spare post");
        assertEquals("in-ozf", form(winding(curlew), "/winding/aim").get("unit"));
        assertEquals("mN-m", form(winding(avocet), "/winding/aim").get("unit"));
        Map<String, String> aim = new HashMap<>(form(winding(avocet), "/winding/aim"));
        aim.put("launch", "2.5");
        assertEquals(200, laptop.form("/winding/aim", aim).statusCode());
        assertTrue(winding(avocet).contains("<dt>launch torque wanted</dt><dd>2.50 mN·m"), winding(avocet));
        meter("Spare post", "dial 3", "2 g-cm", "60 g-cm");
        assertEquals("gf-cm", form(winding(avocet), "/winding/aim").get("unit"), "another meter stands there now");
        assertTrue(winding(avocet).contains("25.5 gf·cm"), winding(avocet));
        assertEquals("in-ozf", form(winding(curlew), "/winding/aim").get("unit"), "and here still the old one");
    }

    @Test
    void a_form_that_stood_open_while_the_meter_was_swapped_is_read_as_it_stood_and_so_is_one_shown_again()
            throws Exception {
        String attempt = called("Curlew");
        choose(attempt, "Table by the door");
        Map<String, String> open = new HashMap<>(form(winding(attempt), "/winding/aim"));
        meter("Table by the door", "dial 9", "0.2 mN-m", "9 mN-m");
        open.put("launch", "0.4");
        open.put("ceiling", "lots");
        var again = laptop.form("/winding/aim", open);
        assertEquals(422, again.statusCode());
        Map<String, String> shown = new HashMap<>(form(again.body(), "/winding/aim"));
        assertEquals("0.4 in-ozf", shown.get("launch") + " " + shown.get("unit"), "what is shown again too");
        shown.put("ceiling", "0.6");
        assertEquals(200, laptop.form("/winding/aim", shown).statusCode());
        String page = winding(attempt);
        assertTrue(page.contains("value=\"0.4 in-ozf\""), "as it was typed: " + page);
        assertTrue(page.contains("2.82 mN·m"), "and as the meter shows it now: " + page);
    }

    @Test
    void a_list_s_answer_is_in_the_unit_that_stood_beside_it_also_from_a_page_that_stood_open_at_noon()
            throws Exception {
        laptop.form("/hall/measure", lane("4 m"));
        String event = value(laptop.get("/checks").body(), "/checks\\?list=packing&amp;subject=([^\"]+)\"");
        String list = "/checks?list=winding-place&subject=" + event;
        String unit = value(laptop.get(list).body(), "data-step=\"lane-length\"[^>]*data-unit=\"([^\"]+)\"");
        assertEquals("m", unit);
        assertEquals(204, laptop.form("/units", Map.of("units", "inch")).statusCode());
        assertTrue(laptop.get(list).body().contains("data-unit=\"ft\""), "a page that is drawn now");
        JsonNode late = laptop.tap("step.tick", tick(event).put("answer", "4").put("unit", unit));
        assertEquals("saved", late.path("state").asText(), late.toString());
        assertTrue(laptop.get(list).body().contains("4 m"), "not 4 ft");
    }

    private static ObjectNode tick(String event) {
        return Json.MAPPER
                .createObjectNode()
                .put("list", "winding-place")
                .put("subject", event)
                .put("step", "lane-length")
                .put("revision", 1);
    }

    private Map<String, String> lane(String length) throws Exception {
        Map<String, String> lane = new HashMap<>(form(laptop.get("/hall").body(), "/hall/measure"));
        lane.putAll(Map.of("hall", "Saltmarsh Hall", "lane", "by the door", "length", length));
        return lane;
    }

    @Test
    void lengths_typed_into_a_page_that_stood_open_while_the_team_chose_others_are_as_it_said() throws Exception {
        Map<String, String> open = lane("4");
        assertEquals("m", open.get("unit"));
        laptop.form("/units", Map.of("units", "inch"));
        String measured = laptop.form("/hall/measure", open).body();
        assertTrue(measured.contains("value=\"4 m\""), measured);
        String cuts = laptop.get("/making?loops=350&knot=20&piece=2&weighs=3&unit=mm&piece-unit=m")
                .body();
        assertTrue(cuts.contains("in mm unless") && cuts.contains("13.8 in"), cuts);
        String now = laptop.get("/making").body();
        assertTrue(now.contains("in in unless") && !now.contains("in mm unless"), now);
        assertFalse(laptop.get("/hall").body().contains("A length without a unit is in metres"));
    }
}
