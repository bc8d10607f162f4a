package org.skeinday.hall.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.steps.web.HallFields;

/** Winding places of the demo's hall. */
class HallWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 81);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static void says(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    private HttpResponse<String> measure(String length, Map<String, String> more) throws Exception {
        return laptop.form("/hall/measure", HallFields.of(length, more));
    }

    private static Map<String, String> bench(String second) {
        return Map.of("kind0", "spectator", "name0", "bench", "first0", "2 m", "second0", second);
    }

    private String place() throws Exception {
        return CalledForTests.value(laptop.get("/hall").body(), "name=\"id\" value=\"([^\"]+)\"");
    }

    @Test
    void a_verdict_says_what_is_too_close_and_by_how_much_to_the_millimetre() throws Exception {
        says(200, "bench is 1 mm too close to", measure("4 m", bench("1499 mm")));
        says(200, "Nothing is too close.", again(bench("1500 mm")));
        assertTrue(laptop.get("/hall").body().contains("<svg viewBox="), "drawn from above");
        assertFalse(laptop.get("/hall").body().contains("style="), "attributes only");
    }

    private HttpResponse<String> again(Map<String, String> more) throws Exception {
        Map<String, String> form = new HashMap<>(more);
        form.put("id", place());
        return measure("4 m", form);
    }

    /** Longer than the record keeps is a slip of whoever pastes, and said beside its field. */
    @Test
    void names_and_lengths_that_are_too_long_are_refused_with_how_long_they_may_be() throws Exception {
        String name = "x".repeat(121);
        says(422, "has at most 120 characters", laptop.form("/hall/describe", Map.of("hall", name)));
        says(422, "has at most 120 characters", laptop.form("/hall/air", Map.of("hall", name, "celsius", "18")));
        says(422, "has at most 120 characters", measure("4 m", Map.of("hall", name)));
        says(422, "must have at most 80 characters", measure("4 m", Map.of("lane", name)));
        says(422, "Measure this by tape", measure("4" + " ".repeat(60) + "m", Map.of("past", "4 m")));
        says(422, "has at most 40 characters", measure("4 m", Map.of("past", "4" + " ".repeat(60) + "m")));
        says(
                422,
                "must have at most 80 characters",
                measure("4 m", Map.of("kind0", "spectator", "name0", name, "first0", "2 m", "second0", "2 m")));
    }

    @Test
    void the_lane_is_compared_with_todays_longest_stretch() throws Exception {
        says(200, "shorter than today", measure("1 m", bench("3 m")));
    }

    @Test
    void numbers_that_are_none_are_refused_beside_their_fields_and_kept_as_typed() throws Exception {
        var lane = measure("long", bench("2 m"));
        assertEquals(422, lane.statusCode());
        assertTrue(lane.body().contains("value=\"long\""), lane.body());
        says(422, "Name what was measured", measure("4 m", Map.of("first0", "2 m", "second0", "1 m")));
        says(422, "Name the hall", measure("4 m", Map.of("hall", " ")));
        says(422, "0 to 5 m/s", measure("4 m", Map.of("drift", "3", "speed", "windy")));
        says(422, "hour of the clock", measure("4 m", Map.of("drift", "13")));
        says(
                422,
                "its mount and its winder end",
                measure("4 m", Map.of("kind0", "lane-mount", "name0", "B", "first0", "0 m", "second0", "3 m")));
        assertFalse(laptop.get("/hall").body().contains("in use"), "nothing was kept");
    }

    @Test
    void a_drift_may_be_typed_with_its_unit_and_a_comma() throws Exception {
        var kept = measure("4 m", Map.of("drift", "3", "speed", "0,2 m/s"));
        assertTrue(kept.statusCode() < 300, kept.body());
        assertTrue(
                kept.body().contains("0.20 m/s") || laptop.get("/hall").body().contains("0.20 m/s"), kept.body());
    }

    @Test
    void several_are_kept_and_one_is_in_use() throws Exception {
        measure("4 m", Map.of());
        says(200, "Old Gym, lane", measure("5 m", Map.of("hall", "Old Gym", "lane", "lane")));
        String page = laptop.get("/hall").body();
        String other = CalledForTests.value(page, "place=([^\"]+)\"[^>]*>Old Gym");
        says(200, "Wind at Saltmarsh Hall", laptop.form("/hall/use", Map.of("id", other)));
        assertEquals(422, laptop.form("/hall/use", Map.of("id", other)).statusCode());
        assertEquals(200, laptop.form("/hall/remove", Map.of("id", other)).statusCode());
        assertFalse(laptop.get("/hall").body().contains("Old Gym"));
        assertEquals(404, laptop.form("/hall/use", Map.of("id", other)).statusCode());
    }

    @Test
    void a_change_that_breaks_the_place_opens_the_item_again_and_says_so_on_now() throws Exception {
        measure("4 m", bench("2 m"));
        String event =
                CalledForTests.value(laptop.get("/checks").body(), "/checks\\?list=packing&amp;subject=([^\"]+)\"");
        tick(event, "distances", "clear");
        tick(event, "lane-length", "4 m");
        again(bench("2.5 m"));
        assertFalse(laptop.get("/now").body().contains("asked again"), "what is no worse opens nothing");
        again(bench("1 m"));
        String now = laptop.get("/now").body();
        assertTrue(now.contains("asked again") && now.contains("bench is 500 mm too close"), now);
        String list = laptop.get("/checks?list=winding-place&subject=" + event).body();
        assertTrue(list.contains("Mend it on the page Hall"), list);
    }

    @Test
    void another_place_asks_all_that_is_critical_again() throws Exception {
        measure("4 m", Map.of());
        measure("4 m", Map.of("hall", "Old Gym"));
        String event =
                CalledForTests.value(laptop.get("/checks").body(), "/checks\\?list=packing&amp;subject=([^\"]+)\"");
        tick(event, "mount-pulled", "15");
        String other = CalledForTests.value(laptop.get("/hall").body(), "place=([^\"]+)\"[^>]*>Old Gym");
        laptop.form("/hall/use", Map.of("id", other));
        assertTrue(laptop.get("/now").body().contains("it is wound at another place now"));
    }

    private void tick(String event, String step, String answer) throws Exception {
        ObjectNode tap = Json.MAPPER
                .createObjectNode()
                .put("list", "winding-place")
                .put("subject", event)
                .put("step", step)
                .put("revision", 1)
                .put("answer", answer);
        assertEquals("saved", laptop.tap("step.tick", tap).path("state").asText());
    }

    @Test
    void drift_and_launch_spot_stand_on_now_and_on_the_printed_card() throws Exception {
        measure(
                "4 m",
                Map.of(
                        "drift", "3", "speed", "0.2", "kind0", "launch", "name0", "X", "first0", "6 m", "second0",
                        "2 m", "side0", "right"));
        for (String page : new String[] {"/now", "/cards"}) {
            String body = laptop.get(page).body();
            assertTrue(body.contains("→ towards 3 o&#39;clock") || body.contains("→ towards 3 o'clock"), body);
            assertTrue(body.contains("6 m from the mount, 2 m to the right"), body);
        }
    }

    @Test
    void only_a_captain_measures() throws Exception {
        assertEquals(403, Demo.joined(app, "helper", "", 82).get("/hall").statusCode());
    }

    private Map<String, String> described(Map<String, String> more) {
        Map<String, String> form = new HashMap<>(Map.of("hall", "Saltmarsh Hall", "ceiling", "", "note", ""));
        form.put("obstructions", "");
        form.putAll(more);
        return form;
    }

    @Test
    void a_hall_has_a_free_height_and_says_under_what() throws Exception {
        measure("4 m", Map.of());
        says(
                200,
                "Free height: 6.2 m, under score board 2.",
                laptop.form(
                        "/hall/describe",
                        described(Map.of(
                                "ceiling",
                                "8,5 m",
                                "obstructions",
                                "hoops 7 m\nscore board 2: 6.2 m",
                                "note",
                                "east door shut"))));
        String page = laptop.get("/hall").body();
        assertTrue(page.contains("score board 2: 6.2 m") && page.contains("value=\"8,5 m\""), page);
        assertTrue(page.contains("east door shut"), page);
    }

    @Test
    void a_hall_that_cannot_be_meant_is_refused_beside_its_fields() throws Exception {
        measure("4 m", Map.of());
        says(422, "has no height", laptop.form("/hall/describe", described(Map.of("obstructions", "hoops"))));
        says(
                422,
                "must not be above the ceiling",
                laptop.form("/hall/describe", described(Map.of("ceiling", "6 m", "obstructions", "hoops 7 m"))));
        says(422, "must be 1 to 20000", laptop.form("/hall/describe", described(Map.of("people", "25 m"))));
        assertFalse(laptop.get("/hall").body().contains("Free height"), "nothing was kept");
    }

    @Test
    void distances_set_for_a_hall_judge_its_places_alone_and_open_the_item_again() throws Exception {
        measure("4 m", bench("2 m"));
        String event =
                CalledForTests.value(laptop.get("/checks").body(), "/checks\\?list=packing&amp;subject=([^\"]+)\"");
        tick(event, "distances", "clear");
        says(200, "bench is 500 mm too close", laptop.form("/hall/describe", described(Map.of("people", "2.5 m"))));
        String now = laptop.get("/now").body();
        assertTrue(now.contains("asked again") && now.contains("bench is 500 mm too close"), now);
        Map<String, String> other = new HashMap<>(bench("2 m"));
        other.put("hall", "Old Gym");
        says(200, "Old Gym, lane", measure("4 m", other));
        String id = CalledForTests.value(laptop.get("/hall").body(), "place=([^\"]+)\"[^>]*>Old Gym");
        assertTrue(laptop.get("/hall?place=" + id).body().contains("Nothing is too close."), "usual distances there");
        says(200, "Nothing is too close.", laptop.form("/hall/describe", described(Map.of())));
    }

    @Test
    void the_air_is_noted_and_can_be_taken_back() throws Exception {
        measure("4 m", Map.of());
        says(
                422,
                "no temperature in °C",
                laptop.form("/hall/air", Map.of("hall", "Saltmarsh Hall", "celsius", "warm", "humidity", "")));
        says(
                422,
                "Type a temperature",
                laptop.form("/hall/air", Map.of("hall", "Saltmarsh Hall", "celsius", "", "humidity", "")));
        says(
                200,
                "18.5 °C, 45 % humidity",
                laptop.form("/hall/air", Map.of("hall", "Saltmarsh Hall", "celsius", "18,5 °C", "humidity", "45")));
        String air = CalledForTests.value(
                laptop.get("/hall").body(),
                "/hall/air/remove\"[^>]*><input type=\"hidden\" name=\"id\" value=\"([^\"]+)\"");
        assertFalse(laptop.form("/hall/air/remove", Map.of("id", air)).body().contains("18.5 °C"), "taken back");
        assertEquals(404, laptop.form("/hall/air/remove", Map.of("id", air)).statusCode());
    }

    @Test
    void less_than_usual_is_the_coachs_word_and_is_said_beside_the_verdict() throws Exception {
        measure("4 m", bench("1.2 m"));
        Visitor captain = Demo.joined(app, "captain", "", 83);
        says(422, "word: ask the coach", captain.form("/hall/describe", described(Map.of("people", "1 m"))));
        says(
                200,
                "Less than usual is kept here. People from the line and its ends: 1 m.",
                laptop.form("/hall/describe", described(Map.of("people", "1 m"))));
        assertEquals(
                200,
                captain.form("/hall/describe", described(Map.of("people", "2 m")))
                        .statusCode());
    }

    @Test
    void a_hall_is_kept_again_as_its_own_form_shows_it() throws Exception {
        measure("4 m", Map.of());
        laptop.form("/hall/describe", described(Map.of("obstructions", "score board 2: 6.2 m")));
        String shown = CalledForTests.value(laptop.get("/hall").body(), "name=\"obstructions\"[^>]*>([^<]+)<");
        says(200, "under score board 2.", laptop.form("/hall/describe", described(Map.of("obstructions", shown))));
    }
}
