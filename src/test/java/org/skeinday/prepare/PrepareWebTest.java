package org.skeinday.prepare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.TestIds;
import org.skeinday.Visitor;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayFiles;

/** Prepare's forms on the real server: what they take, what they refuse and where they say it. */
@Timeout(60)
class PrepareWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private FilledForms forms;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 11);
        forms = new FilledForms(laptop);
    }

    /** Whatever was edited: what is taken out comes in again, whole. */
    @AfterEach
    void stop() throws Exception {
        Map<String, String> texts = laptop.zip("/export.zip");
        app.close();
        assertEquals(17, texts.size());
        DayFiles.Read read =
                DayFiles.read(texts, Day.EMPTY, TestIds.from("again-"), ZoneId.systemDefault(), Duration.ZERO);
        assertEquals(List.of(), read.errors());
    }

    private static void assertSays(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    /** The message stands in the paragraph of its own field. */
    private static void assertBeside(String field, String words, HttpResponse<String> answer) {
        assertEquals(422, answer.statusCode(), answer.body());
        String own = answer.body().replaceAll("(?s).*id=\"wrong-" + field + "\">(.*?)</p>.*", "$1");
        assertTrue(own.contains(words), words + " in " + own + " of " + answer.body());
    }

    private long lines() throws Exception {
        return Files.readAllLines(root.resolve("day/journal.jsonl")).size();
    }

    @Test
    void a_motor_is_added_changed_and_taken_out_again() throws Exception {
        forms.add(
                "motors",
                Map.of("tag", "Z9", "batch", "A", "team", "Reedbank Rotors", "loop", "18 1/2 in", "mass", "1.6 g"));
        String row = forms.row("motors", "Z9");
        assertEquals("18 1/2 in", forms.shown(row).get("loop"), "as it was typed");
        assertEquals(204, forms.save("motors", row, Map.of("loop", "19 in")).statusCode());
        assertEquals("19 in", forms.shown(row).get("loop"));
        Map<String, String> fields = forms.shown(row);
        assertEquals(204, laptop.form("/prepare/motors/remove", fields).statusCode());
        assertFalse(laptop.get("/prepare/motors").body().contains("Z9"));
        assertTrue(Files.readString(root.resolve("day/journal.jsonl")).contains("motor.removed"));
    }

    @Test
    void what_something_hangs_on_cannot_be_taken_out() throws Exception {
        Map<String, String> batch = forms.shown(forms.row("batches", "A"));
        long before = lines();
        assertSays(422, "This batch stays: it has 4 motors", laptop.form("/prepare/batches/remove", batch));
        Map<String, String> model = forms.shown(forms.row("models", "Reed One"));
        assertSays(422, "1 entry and 7 flights", laptop.form("/prepare/models/remove", model));
        assertEquals(before, lines());
    }

    @Test
    void rules_that_contradict_themselves_are_refused_beside_the_field() throws Exception {
        long before = lines();
        var refused = forms.refused("events", Map.of("name", "New day", "attempts", "2", "best-of", "3"));
        assertBeside("best-of", "The best 3 of 2 attempts cannot count; write at most 2.", refused);
        assertTrue(refused.body().contains("value=\"New day\""), "what was typed stays");
        assertEquals(before, lines(), "nothing half saved");
    }

    @Test
    void a_motor_over_the_limit_is_not_declared_nor_made_heavier_nor_does_the_limit_fall_below_it() throws Exception {
        String curlew = forms.row("entries", "Curlew");
        assertEquals("A3 | B2 | C1", forms.shown(curlew).get("motors"));
        forms.add(
                "motors",
                Map.of("tag", "H1", "batch", "A", "team", "Reedbank Rotors", "loop", "19 in", "mass", "1.9 g"));
        var declared = forms.save("entries", curlew, Map.of("motors", "A3 | H1"));
        assertBeside("motors", "H1 weighs 1.9 g, over the limit of 1.85 g", declared);
        var heavier = forms.save("motors", forms.row("motors", "A3"), Map.of("inspected-mass", "1.86 g"));
        assertBeside("inspected-mass", "A3 weighs 1.86 g, over the limit of 1.85 g", heavier);
        var limit = forms.save("terms", forms.row("terms", "Saltmarsh Rotor Day"), Map.of("motor-limit", "1.7 g"));
        assertBeside("motor-limit", "declared motor B2 weighs 1.76 g, over the limit of 1.7 g", limit);
        assertSays(422, "weighs 1.92 g, over the limit of 1.85 g", inspect("A3", "1.92 g", "team"));
    }

    private HttpResponse<String> inspect(String tag, String mass, String place) throws Exception {
        String id = forms.row("motors", tag).replaceFirst(".*/", "");
        return laptop.form("/inspection", Map.of("motor", id, "mass", mass, "place", place));
    }

    @Test
    void a_motor_that_is_handed_in_is_not_used_until_it_is_given_back() throws Exception {
        assertSays(200, "handed in", inspect("A3", "1.56 g", "in"));
        String motor = forms.row("motors", "A3").replaceFirst(".*/", "");
        String entry = laptop.get("/now").body().replaceAll("(?s).*?name=\"entry\" value=\"([^\"]+)\".*", "$1");
        Map<String, String> call = Map.of("entry", entry, "motor", motor);
        assertFalse(laptop.get("/now").body().contains("A3 ·"), "nor is it offered");
        assertSays(422, "is handed in: it must be given back", laptop.form("/attempt/call", call));
        inspect("A3", "1.56 g", "back");
        assertEquals(200, laptop.form("/attempt/call", call).statusCode());
    }

    @Test
    void nobody_is_put_on_a_task_without_clearance_nor_loses_it_while_on_it() throws Exception {
        String curlew = forms.row("entries", "Curlew");
        var refused = forms.save("entries", curlew, Map.of("winds", "Mattis"));
        assertBeside("winds", "Mattis has no clearance for this task; choose somebody who winds", refused);
        var loses = forms.save("crew", forms.row("crew", "Tomek"), Map.of("tasks", "reads"));
        assertBeside("tasks", "Tomek winds for Curlew; keep 'winds' here", loses);
        assertEquals(
                204,
                forms.save("crew", forms.row("crew", "Tomek"), Map.of("tasks", "winds | reads"))
                        .statusCode());
    }

    @Test
    void windows_of_one_model_that_overlap_are_refused() throws Exception {
        String curlew = forms.row("windows", "Curlew");
        Map<String, String> first = forms.shown(curlew);
        var own = forms.refused(
                "windows", Map.of("entry", "Curlew", "opens", first.get("opens"), "closes", "2031-01-01T10:00"));
        assertBeside("opens", "This overlaps the window of Curlew from", own);
        forms.save("entries", forms.row("entries", "Dunlin"), Map.of("models", "Reed One"));
        var shared = forms.save(
                "windows",
                forms.row("windows", "Dunlin"),
                Map.of("opens", first.get("opens"), "closes", first.get("closes")));
        assertBeside("opens", "and both fly Reed One; move one of the two", shared);
    }

    @Test
    void who_saves_an_old_form_is_told_what_changed_and_keeps_what_was_typed() throws Exception {
        String row = forms.row("motors", "A1");
        Map<String, String> mine = new HashMap<>(forms.shown(row));
        assertEquals(204, forms.save("motors", row, Map.of("mass", "1.7 g")).statusCode());
        mine.put("loop", "20 in");
        var old = laptop.form("/prepare/motors/save", mine);
        assertEquals(409, old.statusCode());
        assertTrue(old.body().contains("mass was ‘1.69 g’, now it is ‘1.7 g’"), old.body());
        assertTrue(old.body().contains("value=\"20 in\""), "what was typed stays");
        Map<String, String> again = FilledForms.fields(old.body());
        assertEquals(
                204, laptop.form("/prepare/motors/save", again).statusCode(), "knowing it, mine goes in its place");
        assertEquals("20 in", forms.shown(row).get("loop"));
        var removed = new HashMap<>(mine);
        assertEquals(409, laptop.form("/prepare/motors/remove", removed).statusCode());
    }

    @Test
    void a_person_whose_name_is_corrected_stays_the_same_person() throws Exception {
        String mattis = Demo.person(app, "Mattis");
        assertEquals(
                204,
                forms.save("crew", forms.row("crew", "Mattis"), Map.of("name", "Mathis"))
                        .statusCode());
        assertEquals("Mathis", app.names().get(mattis));
        assertFalse(Files.readString(root.resolve("day/journal.jsonl")).contains("Mathis"), "names are kept beside");
        assertEquals("Mathis", forms.shown(forms.row("entries", "Curlew")).get("times"));
    }

    @Test
    void another_like_the_last_begins_with_its_values_and_no_name() throws Exception {
        Map<String, String> typed = new HashMap<>(forms.shown("/prepare/motors/new"));
        typed.putAll(Map.of("tag", "Z1", "batch", "B", "loop", "18 in", "mass", "1.5 g", "then", "another"));
        var saved = laptop.form("/prepare/motors/save", typed);
        String next = saved.headers().firstValue("HX-Redirect").orElseThrow();
        Map<String, String> like = forms.shown(next);
        assertEquals("B", like.get("batch"));
        assertEquals("18 in", like.get("loop"));
        assertEquals("", like.get("tag"));
        assertEquals("", like.get("id"), "a new one");
    }

    @Test
    void what_hangs_on_an_entry_keeps_it_in_its_event_and_terms_stay_with_theirs() throws Exception {
        forms.add("events", Map.of("name", "Other day"));
        var moved = forms.save("entries", forms.row("entries", "Dunlin"), Map.of("event", "Other day"));
        assertBeside("event", "The event stays Saltmarsh Rotor Day: this has 1 window.", moved);
        var terms = forms.save("terms", forms.row("terms", "Saltmarsh Rotor Day"), Map.of("event", "Other day"));
        assertBeside("event", "been set for Saltmarsh Rotor Day", terms);
        assertFalse(laptop.get(forms.row("terms", "Saltmarsh Rotor Day")).body().contains("Take it out"));
    }

    @Test
    void a_tag_with_the_sign_that_parts_motors_is_refused() throws Exception {
        assertBeside(
                "tag",
                "parts the motors of an entry",
                forms.save("motors", forms.row("motors", "A3"), Map.of("tag", "A|3")));
    }

    @Test
    void a_tag_that_differs_from_another_by_capital_letters_only_is_refused_and_its_own_may_be_written_anew()
            throws Exception {
        assertBeside(
                "tag", "by capital letters only", forms.save("motors", forms.row("motors", "A3"), Map.of("tag", "a4")));
        assertEquals(
                204,
                forms.save("motors", forms.row("motors", "A3"), Map.of("tag", "a3"))
                        .statusCode());
    }

    @Test
    void an_inspection_page_that_is_old_loses_no_mass() throws Exception {
        String id = forms.row("motors", "B5").replaceFirst(".*/", "");
        String page = laptop.get("/inspection").body();
        String own = page.replaceAll(
                "(?s).*name=\"motor\" value=\"" + id + "\"><input type=\"hidden\" name=\"seen\" value=\"([^\"]*)\".*",
                "$1");
        String seen = own.replace("&#34;", "\"").replace("&#39;", "'").replace("&amp;", "&");
        assertSays(
                200,
                "1.6 g",
                laptop.form("/inspection", Map.of("motor", id, "mass", "1.6 g", "place", "team", "seen", seen)));
        var old = laptop.form("/inspection", Map.of("motor", id, "mass", "", "place", "in", "seen", seen));
        assertSays(409, "inspected mass was empty, now it is ‘1.6 g’", old);
        assertTrue(old.body().contains("value=\"1.6 g\""), "the mass is still there");
    }

    @Test
    void a_preset_fills_the_rules_in_and_leaves_them_open() throws Exception {
        Map<String, String> rules = forms.shown("/prepare/events/new?preset=mean-seconds");
        assertEquals("6", rules.get("attempts"));
        assertEquals("mean", rules.get("take"));
        assertEquals("60", rules.get("minimum"));
        for (Preset preset : Preset.all()) {
            forms.add("events", withName(forms.shown("/prepare/events/new?preset=" + preset.path()), preset.name()));
        }
    }

    private static Map<String, String> withName(Map<String, String> fields, String name) {
        Map<String, String> all = new HashMap<>(fields);
        all.put("name", name);
        return all;
    }

    @Test
    void a_device_that_is_no_captain_prepares_nothing() throws Exception {
        Visitor helper = Demo.joined(app, "helper", "", 12);
        for (String path :
                new String[] {"/prepare", "/prepare/motors", "/inspection", "/import", "/export.zip", "/key-in"}) {
            assertEquals(403, helper.get(path).statusCode(), path);
        }
        assertEquals(
                403, helper.form("/prepare/motors/save", Map.of("tag", "X")).statusCode());
        assertEquals(200, helper.get("/practice").statusCode());
    }

    @Test
    void a_practice_flight_takes_the_last_values_and_a_time() throws Exception {
        assertSays(200, "Practice 20", laptop.form("/practice/begin", Map.of()));
        Map<String, String> row = new HashMap<>(Map.of("model", "Reed One", "motor", "A1", "crank-turns", "214"));
        row.putAll(Map.of(
                "launch-torque",
                "0.35 in-ozf",
                "back-off",
                "2",
                "time",
                "1:44.2",
                "note",
                "less pitch",
                "valid",
                "yes"));
        var saved = laptop.form("/practice", row);
        assertSays(200, "Saved: A1, 1:44.2", saved);
        assertTrue(saved.body().contains("less pitch"));
        assertTrue(saved.body().matches("(?s).*id=\"f-crank-turns\"[^>]*value=\"214\".*"), "offered again");
        assertTrue(saved.body().matches("(?s).*id=\"f-time\"[^>]*value=\"\".*"), "its own each time");
        row.put("time", "1:99");
        assertBeside("time", "after the colon come two digits", laptop.form("/practice", row));
        row.putAll(Map.of("time", "1:20", "valid", "no"));
        assertBeside("reason", "A flight that is not valid needs a reason", laptop.form("/practice", row));
    }

    @Test
    void a_flight_of_today_does_not_join_an_evening_of_another_day_unless_somebody_says_so() throws Exception {
        Map<String, String> row =
                new HashMap<>(Map.of("model", "Reed One", "motor", "A1", "time", "1:44.2", "valid", "yes"));
        var asked = laptop.form("/practice", row);
        assertSays(422, "Saltmarsh Practice Evening is of another day, 20", asked);
        assertTrue(asked.body().matches("(?s).*id=\"f-time\"[^>]*value=\"1:44.2\".*"), "what was typed stays");
        row.put("earlier", "yes");
        assertSays(200, "Saved: A1, 1:44.2", laptop.form("/practice", row));
        row.remove("earlier");
        assertSays(200, "Practice 20", laptop.form("/practice/begin", Map.of()));
        var today = laptop.form("/practice", row);
        assertSays(200, "Saved: A1, 1:44.2", today);
        assertFalse(today.body().contains("of another day"), "nothing is asked any more");
    }

    @Test
    void the_flight_log_says_what_it_lacks() throws Exception {
        assertTrue(laptop.get("/log").body().contains("The log is complete."));
        String terms = forms.row("terms", "Saltmarsh Rotor Day");
        forms.save("terms", terms, Map.of("log-flights", "14", "log-columns", "note | time"));
        String log = laptop.get("/log").body();
        assertTrue(log.contains("The log must show 14 flights and has 13."), log);
        assertTrue(log.contains("has no note."), log);
    }
}
