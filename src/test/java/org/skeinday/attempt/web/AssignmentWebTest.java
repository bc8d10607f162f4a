package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import java.net.http.HttpResponse;
import java.nio.file.Path;
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
import org.skeinday.fault.CalledForTests;
import org.skeinday.prepare.FilledForms;

/** Who does what with which motor is decided in one place: said by hand, else the plan's, else the entry's own. */
@Timeout(120)
class AssignmentWebTest {
    private static final String WINDS = "<dt>winds / reads</dt><dd>([^/<]+?) / ";

    private static final String WOUND = "<dt>wound / read</dt><dd>([^/<]+?) / ";

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

    private String id(String kind, String name) throws Exception {
        return new FilledForms(laptop).row(kind, name).replaceFirst(".*/", "");
    }

    private HttpResponse<String> name(int number, String task, String person) throws Exception {
        Map<String, String> form = new HashMap<>(Map.of("entry", id("entries", "Curlew"), "number", "" + number));
        form.put("hand-" + task, person);
        return laptop.form("/attempt/name-hands", form);
    }

    private String person(String name) throws Exception {
        return value(
                laptop.get("/now").body(), "(?s)name=\"hand-winds\".*?<option value=\"([^\"]+)\"[^>]*>" + name + "<");
    }

    /** The winder as pages say it: Now, and the card on paper. */
    private void everywhere(String winder) throws Exception {
        assertEquals(winder, value(laptop.get("/now").body(), WINDS));
        assertEquals(
                winder, value(laptop.get("/cards").body(), "(?s)Curlew, attempt 1 .*?<dt>Winds</dt><dd>([^<]+)</dd>"));
    }

    @Test
    void who_is_named_by_hand_stands_on_every_page_until_winding_begins() throws Exception {
        String before = value(laptop.get("/now").body(), WINDS);
        String other = before.equals("Tomek") ? "Jorun" : "Tomek";
        HttpResponse<String> named = name(1, "winds", person(other));
        assertEquals(200, named.statusCode(), named.body());
        everywhere(other);
        assertEquals(200, name(1, "winds", "").statusCode());
        everywhere(before);
        name(1, "winds", person(other));
        CalledForTests.callOnly(laptop);
        assertEquals(other, value(laptop.get("/now").body(), WINDS), "and after the call");
        String attempt = CalledForTests.letWind(laptop);
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding"));
        HttpResponse<String> late = name(1, "winds", "");
        assertEquals(422, late.statusCode());
        assertTrue(late.body().contains("until winding begins"), late.body());
        assertEquals(other, value(laptop.get("/now").body(), WINDS));
    }

    private String abandoned() throws Exception {
        String called = laptop.form("/attempt/call", Map.of("entry", id("entries", "Curlew"), "motor", ""))
                .body();
        String attempt = value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        var given = laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "a rib broke"));
        assertEquals(200, given.statusCode(), given.body());
        return attempt;
    }

    @Test
    void who_is_named_for_an_attempt_is_named_for_its_next_try_too_until_somebody_says_otherwise() throws Exception {
        String before = value(laptop.get("/now").body(), WINDS);
        String other = before.equals("Tomek") ? "Jorun" : "Tomek";
        String person = person(other);
        assertEquals(200, name(1, "winds", person).statusCode());
        abandoned();
        assertEquals(other, value(laptop.get("/now").body(), WINDS), "the 2nd try");
        abandoned();
        assertEquals(other, value(laptop.get("/now").body(), WINDS), "the 3rd");
        assertEquals(200, name(3, "winds", "").statusCode());
        assertEquals(before, value(laptop.get("/now").body(), WINDS), "nobody by hand");
    }

    @Test
    void the_record_of_a_flown_attempt_says_only_what_was_known_then() throws Exception {
        HttpResponse<String> called =
                laptop.form("/attempt/call", Map.of("entry", id("entries", "Curlew"), "motor", ""));
        String attempt = value(called.body(), "name=\"attempt\" value=\"([^\"]+)\"");
        String record = "/attempt/" + attempt;
        assertEquals(value(called.body(), WINDS), value(laptop.get(record).body(), WINDS), "before the release");
        String other = value(called.body(), WINDS).equals("Tomek") ? "Jorun" : "Tomek";
        assertEquals(200, name(1, "winds", person(other)).statusCode());
        assertEquals(other, value(laptop.get(record).body(), WINDS));
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released"));
        String flown = laptop.get(record).body();
        assertEquals(other, value(flown, WOUND), "as it was assigned then");
        assertFalse(flown.contains("winds / reads") || flown.contains("loads / releases"), flown);
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "a ball", "again", "yes"));
        laptop.form("/day/take", Map.of("proposal", proposed()));
        assertEquals(200, name(2, "winds", "").statusCode());
        String later = laptop.get(record).body();
        assertEquals(other, value(later, WOUND), "whatever is planned and said of the next try");
        assertFalse(later.contains("winds / reads") || later.contains("loads / releases"), later);
    }

    private String proposed() throws Exception {
        return value(laptop.form("/day/propose", Map.of()).body(), "name=\"proposal\" value=\"([^\"]+)\"");
    }

    @Test
    void nobody_is_named_for_what_they_are_not_cleared_for_or_for_an_attempt_that_does_not_come() throws Exception {
        HttpResponse<String> wrong = name(1, "winds", "nobody-known");
        assertEquals(422, wrong.statusCode());
        assertTrue(wrong.body().contains("who is cleared for it"), wrong.body());
        assertEquals(409, name(3, "winds", "").statusCode());
    }

    @Test
    void the_plan_of_the_day_names_the_winder_and_the_motor_that_the_pages_show() throws Exception {
        assertEquals(
                200, laptop.form("/day/take", Map.of("proposal", proposed())).statusCode());
        String day = laptop.get("/day").body();
        String now = laptop.get("/now").body();
        String motor = value(now, "(?s)name=\"motor\".*?<option value=\"[^\"]+\"[^>]*>(\\S+) ");
        String winder = value(now, WINDS);
        assertFalse(winder.contains(" or "), "one is named: " + winder);
        String windRow = value(day, "(?s)(<tr[^>]*>(?:(?!</tr>).)*Curlew 1 wind(?:(?!</tr>).)*</tr>)");
        assertTrue(windRow.contains(winder) && windRow.contains(motor), windRow + " has " + winder + " and " + motor);
        everywhere(winder);
        assertEquals(
                motor,
                value(laptop.get("/cards").body(), "(?s)Curlew, attempt 1 .*?<dt>Motor</dt><dd>([^,<]+), use 1</dd>"));
    }
}
