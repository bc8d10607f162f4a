package org.skeinday.prepare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.LocalDate;
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

/** An empty folder: what forms begin with, what is said after saving and where it goes on. */
@Timeout(60)
class FirstValuesWebTest {
    private static final String LATER = LocalDate.now().plusDays(40).toString();

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private FilledForms forms;

    @BeforeEach
    void start() throws Exception {
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 21);
        forms = new FilledForms(laptop);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void event(String name, String kind, String day) throws Exception {
        forms.add("events", Map.of("name", name, "kind", kind, "day", day));
    }

    private String after(HttpResponse<String> saved) {
        assertEquals(204, saved.statusCode(), saved.body());
        return saved.headers().firstValue("HX-Redirect").orElseThrow();
    }

    private HttpResponse<String> another(String kind, String path, Map<String, String> typed) throws Exception {
        Map<String, String> fields = new HashMap<>(forms.shown(path));
        fields.putAll(typed);
        fields.put("then", "another");
        return laptop.form("/prepare/" + kind + "/save", fields);
    }

    @Test
    void a_preset_fills_the_rules_in_and_keeps_what_was_typed() throws Exception {
        Map<String, String> form = forms.shown("/prepare/events/new?preset=mean-seconds"
                + "&name=Reed+Cup&hall=Reed+Hall&ceiling=8.4+m&kind=hosting&attempts=9");
        assertEquals("Reed Cup", form.get("name"));
        assertEquals("Reed Hall", form.get("hall"));
        assertEquals("8.4 m", form.get("ceiling"));
        assertEquals("hosting", form.get("kind"));
        assertEquals("6", form.get("attempts"));
        assertEquals("mean", form.get("take"));
        String page = laptop.get("/prepare/events/new").body();
        assertTrue(page.contains("<a class=\"button\" href=\"/prepare/events/new?preset=mean-seconds\""), page);
    }

    @Test
    void a_saved_list_says_so_and_leads_on() throws Exception {
        String list = after(forms.save(
                "events", "/prepare/events/new", Map.of("name", "Reed Cup", "kind", "visiting", "day", LATER)));
        String page = laptop.get(list).body();
        assertTrue(page.contains("Saved: Reed Cup."), page);
        assertTrue(page.contains("<a class=\"button primary\" href=\"/prepare/terms\">Next: Terms</a>"), page);
        assertFalse(laptop.get("/prepare/events").body().contains("Saved:"));
        String batches = after(forms.save("batches", "/prepare/batches/new", Map.of("batch", "A")));
        assertTrue(
                laptop.get(batches).body().contains("Next: Motors"), "what comes after it, not what was passed over");
    }

    @Test
    void when_every_step_is_done_it_leads_to_now() throws Exception {
        try (App demo = Demo.start(root.resolve("demo"))) {
            Visitor coach = new Visitor(demo.port(), "", 22);
            var rows = new FilledForms(coach);
            rows.add("stations", Map.of("station", "Third table"));
            String saved = after(rows.save("motors", rows.row("motors", "A1"), Map.of("mass", "1.7 g")));
            String page = coach.get(saved).body();
            assertTrue(page.contains("Saved: A1."), page);
            assertTrue(page.contains("<a class=\"button primary\" href=\"/\">To Now</a>"), page);
        }
    }

    @Test
    void one_more_motor_has_batch_and_team_and_no_mass() throws Exception {
        forms.add("batches", Map.of("batch", "A"));
        forms.add("models", Map.of("model", "Reed One", "team", "Reed", "hook-distance", "9.5 in"));
        Map<String, String> form = forms.shown("/prepare/motors/new");
        assertEquals("A", form.get("batch"));
        assertEquals("Reed", form.get("team"));
        String next =
                after(another("motors", "/prepare/motors/new", Map.of("tag", "M1", "loop", "18,5 in", "mass", "1.6")));
        assertTrue(laptop.get(next).body().contains("Saved: M1."), next);
        Map<String, String> like = forms.shown(next);
        assertEquals("", like.get("mass"));
        assertEquals("", like.get("tag"));
        assertEquals("18.5 in", like.get("loop"));
        Map<String, String> saved = forms.shown(forms.row("motors", "M1"));
        assertEquals("1.6 g", saved.get("mass"));
    }

    @Test
    void one_more_flight_proposes_nothing_that_was_measured_or_said_of_the_last() throws Exception {
        event("Reed evening", "practice", LocalDate.now().toString());
        forms.add("batches", Map.of("batch", "A"));
        forms.add("motors", Map.of("tag", "M2", "team", "Reed", "loop", "18.5 in", "mass", "1.6 g"));
        Map<String, String> measured = Map.of(
                "crank-turns", "200",
                "stop-torque", "0.5 in-ozf",
                "launch-torque", "0.4 in-ozf",
                "back-off", "3",
                "time", "1:40",
                "remaining", "40",
                "note", "steady",
                "valid", "no",
                "reason", "touched a wall");
        Map<String, String> typed = new HashMap<>(measured);
        typed.putAll(Map.of("motor", "M2", "flown", LocalDate.now() + "T10:00", "ratio", "12"));
        Map<String, String> like = forms.shown(after(another("flights", "/prepare/flights/new", typed)));
        assertEquals("M2", like.get("motor"));
        assertEquals("12", like.get("ratio"), "of the winder, not of the flight");
        measured.keySet().forEach(field -> assertEquals(field.equals("valid") ? "yes" : "", like.get(field), field));
    }

    @Test
    void an_empty_field_says_that_it_is_needed() throws Exception {
        var refused = forms.refused("models", Map.of("model", "Reed One", "team", "Reed"));
        assertEquals(422, refused.statusCode());
        assertTrue(refused.body().contains("id=\"wrong-hook-distance\">Needed: type it in.</p>"), refused.body());
    }

    @Test
    void windows_begin_in_the_morning_and_follow_each_other() throws Exception {
        event("Reed Cup", "visiting", LATER);
        Map<String, String> form = forms.shown("/prepare/windows/new");
        assertEquals(LATER + "T10:00", form.get("opens"));
        assertEquals(LATER + "T10:12", form.get("closes"));
        Map<String, String> next = forms.shown(after(another("windows", "/prepare/windows/new", Map.of())));
        assertEquals(LATER + "T10:12", next.get("opens"));
        assertEquals(LATER + "T10:24", next.get("closes"));
    }

    @Test
    void a_window_today_opens_in_the_coming_quarter() throws Exception {
        event("Reed Cup", "visiting", LocalDate.now().toString());
        String opens = forms.shown("/prepare/windows/new").get("opens");
        assertTrue(opens.matches(".*T\\d\\d:(00|15|30|45)"), opens);
    }

    @Test
    void the_event_that_was_added_last_is_offered_first() throws Exception {
        event("Saltmarsh Day", "visiting", LATER);
        event("Reed Cup", "visiting", LATER);
        for (String kind : new String[] {"terms", "entries", "windows"}) {
            assertEquals("Reed Cup", forms.shown("/prepare/" + kind + "/new").get("event"), kind);
        }
        forms.add("terms", Map.of());
        assertEquals("Saltmarsh Day", forms.shown("/prepare/terms/new").get("event"), "the other has its terms");
    }

    @Test
    void an_entry_is_own_where_a_team_visits_and_as_the_first_of_a_host() throws Exception {
        event("Away", "visiting", LATER);
        forms.add("entries", Map.of("entry", "Curlew", "team", "Reed"));
        assertEquals("yes", forms.shown("/prepare/entries/new").get("own"));
        event("At home", "hosting", LATER);
        forms.add("entries", Map.of("entry", "Curlew", "team", "Reed"));
        assertEquals("yes", forms.shown(forms.row("entries", "Curlew")).get("own"));
        assertEquals("no", forms.shown("/prepare/entries/new").get("own"));
    }

    @Test
    void a_day_without_own_entries_says_how_to_mark_them() throws Exception {
        event("Reed Cup", "hosting", LocalDate.now().toString());
        assertTrue(laptop.get("/day").body().contains("or there is none yet"));
        forms.add("entries", Map.of("entry", "Curlew", "team", "Reed", "own", "no"));
        String day = laptop.get("/day").body();
        assertTrue(day.contains("No entry is marked as your own: Prepare, Entries, Own."), day);
    }

    @Test
    void practice_without_a_motor_says_where_to_add_one_and_a_time_is_said_in_minutes() throws Exception {
        String empty = laptop.form("/practice/begin", Map.of()).body();
        assertTrue(empty.contains("There is no motor yet: <a href=\"/prepare/motors/new\">"), empty);
        assertFalse(empty.contains("Log this flight"), empty);
        forms.add("batches", Map.of("batch", "A"));
        forms.add("motors", Map.of("tag", "M2", "team", "Reed", "loop", "18.5 in", "mass", "1.6 g"));
        var saved = laptop.form("/practice", Map.of("motor", "M2", "time", "95", "valid", "yes"));
        assertEquals(200, saved.statusCode(), saved.body());
        assertTrue(saved.body().contains("Saved: M2, 1:35"), saved.body());
    }
}
