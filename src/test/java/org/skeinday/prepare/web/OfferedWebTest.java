package org.skeinday.prepare.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
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
import org.skeinday.prepare.FilledForms;

/** What the form of practice only proposed is no measurement, and what is unlikely is asked about once. */
@Timeout(90)
class OfferedWebTest {
    private static final Map<String, String> TYPED = Map.of(
            "model",
            "Reed One",
            "motor",
            "A1",
            "crank-turns",
            "210",
            "launch-torque",
            "0.5 in-ozf",
            "back-off",
            "3",
            "time",
            "1:48",
            "remaining",
            "40",
            "note",
            "",
            "valid",
            "yes",
            "reason",
            "");

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 38);
        assertEquals(200, laptop.form("/practice/begin", Map.of()).statusCode());
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private HttpResponse<String> log(Map<String, String> more) throws Exception {
        Map<String, String> fields = new HashMap<>(TYPED);
        fields.putAll(more);
        return laptop.form("/practice", fields);
    }

    /** As the page sends it back: every field as it stands, and beside it what was proposed. */
    private Map<String, String> asOffered(String page, String... columns) {
        Map<String, String> fields = new HashMap<>();
        for (String column : columns) {
            String text = CalledForTests.value(page, "name=\"offered-" + column + "\" value=\"([^\"]*)\"");
            fields.put("offered-" + column, text);
            fields.put(column, text);
        }
        return fields;
    }

    @Test
    void the_winder_is_that_of_the_place_at_work_and_where_its_turns_are_not_counted_the_copy_is_said()
            throws Exception {
        String first = log(Map.of()).body();
        assertFalse(first.contains("as on the flight before"), first);
        var forms = new FilledForms(laptop);
        for (String place : List.of("Table by the door", "Spare post")) {
            forms.save("stations", forms.row("stations", place), Map.of("winder-ratio", "4"));
        }
        log(Map.of("time", "1:49", "crank-turns", "400"));
        assertTrue(ratios().contains("4"), ratios().toString());
        for (String place : List.of("Table by the door", "Spare post")) {
            forms.save("stations", forms.row("stations", place), Map.of("winder-ratio", ""));
        }
        String third = log(Map.of("time", "1:50", "crank-turns", "400")).body();
        assertTrue(third.contains("4 motor turns to a crank turn, as on the flight before"), third);
    }

    /** Of every practice flight, as the bundle of files has it. */
    private List<String> ratios() throws Exception {
        return Pattern.compile("\"ratio\" ?: ?([0-9.]+)")
                .matcher(laptop.get("/export.json").body())
                .results()
                .map(found -> found.group(1))
                .toList();
    }

    @Test
    void what_the_form_only_proposed_is_marked_offered_and_stands_in_no_log_until_it_is_confirmed() throws Exception {
        String first = log(Map.of()).body();
        assertFalse(first.contains("offered: "), "typed");
        Map<String, String> kept = asOffered(first, "crank-turns", "launch-torque", "back-off");
        String second = log(kept).body();
        assertTrue(second.contains("offered: crank turns, launch torque, back-off"), second);
        List<String> log = laptop.get("/log.csv").body().lines().toList();
        String last = log.get(log.size() - 1);
        assertTrue(last.contains("A1") && last.contains("1:48"), "what was typed: " + last);
        assertFalse(last.contains("210") || last.contains("0.5 in-ozf"), "what was offered: " + last);
        assertTrue(log.get(log.size() - 2).contains("210"), log.toString());
        assertTrue(laptop.get("/log").body().contains(" has no turns, launch."), "and the log lacks it");

        String flight = CalledForTests.value(
                second, "/practice/so[^>]*><input type=\"hidden\" name=\"flight\" value=\"([^\"]+)\"");
        String page = laptop.get("/evening/flight/" + flight).body();
        assertTrue(page.contains("(offered)") && page.contains("launch torque offered"), page);
        String third = log(Map.of("time", "1:50")).body();
        assertEquals(1, third.split("offered: ", -1).length - 1, "what is typed is not marked for the flight before");
        Map<String, String> so = new HashMap<>(Map.of("flight", flight, "number", "launch-torque=1.0"));
        assertEquals(409, laptop.form("/practice/so", so).statusCode(), "another number stands there");
        so.put("number", CalledForTests.value(second, "value=\"(launch-torque=[^\"]+)\""));
        String confirmed = laptop.form("/practice/so", so).body();
        assertTrue(confirmed.contains("offered: crank turns, back-off"), confirmed);
        assertTrue(laptop.get("/evening/flight/" + flight).body().contains("launch torque offered and confirmed"));
    }

    @Test
    void what_is_typed_or_ticked_as_so_again_is_measured_and_a_correction_of_what_was_offered_is_too()
            throws Exception {
        Map<String, String> kept = asOffered(log(Map.of()).body(), "crank-turns", "launch-torque", "back-off");
        kept.put("launch-torque", "0.47 in-ozf");
        kept.put("so", "crank-turns");
        String page = log(kept).body();
        assertTrue(page.contains("offered: back-off</span>"), page);
        String row = "/prepare/flights/row/" + CalledForTests.value(page, "/prepare/flights/row/([^\"]+)\"");
        String form = laptop.get(row).body();
        Map<String, String> changed = new HashMap<>(TYPED);
        changed.put("id", row.substring(row.lastIndexOf('/') + 1));
        changed.put("back-off", "4");
        changed.put("event", CalledForTests.value(form, "<option value=\"(Practice [^\"]+)\" selected"));
        changed.put("flown", CalledForTests.value(form, "name=\"flown\"[^>]* value=\"([^\"]+)\""));
        assertEquals(204, laptop.form("/prepare/flights/save", changed).statusCode());
        assertFalse(laptop.get("/practice").body().contains("offered: "), "what was typed is measured");
    }

    @Test
    void an_unlikely_number_is_asked_about_once_and_stays_marked_when_it_is_insisted_upon() throws Exception {
        HttpResponse<String> asked = log(Map.of("remaining", "330"));
        assertEquals(422, asked.statusCode());
        assertTrue(asked.body().contains("More turns are left than it was launched with: 330 of 207"), asked.body());
        String codes = CalledForTests.value(asked.body(), "name=\"insist\" value=\"([^\"]+)\"");
        assertEquals("more-left-than-wound", codes);
        HttpResponse<String> other = log(Map.of("remaining", "330", "crank-turns", "2250", "insist", codes));
        assertEquals(422, other.statusCode(), "another doubt is another question");
        HttpResponse<String> taken = log(Map.of("remaining", "330", "insist", codes));
        assertEquals(200, taken.statusCode(), taken.body());
        assertTrue(taken.body().contains("turns remaining doubted: More turns are left"), taken.body());
        assertTrue(taken.body().contains("crank turns doubted: More turns are left"), "which of the two is wrong?");
        String evening = laptop.get("/evening").body();
        assertTrue(evening.contains("to be confirmed"), evening);
        Map<String, String> so = Map.of(
                "flight", CalledForTests.value(taken.body(), "name=\"flight\" value=\"([^\"]+)\""),
                "number", CalledForTests.value(taken.body(), "value=\"(remaining=[^\"]+)\""));
        assertFalse(laptop.form("/practice/so", so).body().contains("doubted: "), "until somebody says that it was so");
    }
}
