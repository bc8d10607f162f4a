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

    @Test
    void nobody_is_named_for_what_they_are_not_cleared_for_or_for_an_attempt_that_does_not_come() throws Exception {
        HttpResponse<String> wrong = name(1, "winds", "nobody-known");
        assertEquals(422, wrong.statusCode());
        assertTrue(wrong.body().contains("who is cleared for it"), wrong.body());
        assertEquals(409, name(3, "winds", "").statusCode());
    }

    @Test
    void the_plan_of_the_day_names_the_winder_and_the_motor_that_the_pages_show() throws Exception {
        HttpResponse<String> proposed = laptop.form("/day/propose", Map.of());
        String proposal = value(proposed.body(), "name=\"proposal\" value=\"([^\"]+)\"");
        assertEquals(200, laptop.form("/day/take", Map.of("proposal", proposal)).statusCode());
        String day = laptop.get("/day").body();
        String now = laptop.get("/now").body();
        String motor = value(now, "(?s)name=\"motor\".*?<option value=\"[^\"]+\"[^>]*>(\\S+) ");
        String winder = value(now, WINDS);
        assertFalse(winder.contains(" or "), "one is named: " + winder);
        String windRow = value(day, "(?s)(<tr[^>]*>(?:(?!</tr>).)*Curlew 1 wind(?:(?!</tr>).)*</tr>)");
        assertTrue(windRow.contains(winder) && windRow.contains(motor), windRow + " has " + winder + " and " + motor);
        everywhere(winder);
        assertEquals(
                motor, value(laptop.get("/cards").body(), "(?s)Curlew, attempt 1 .*?<dt>Motor</dt><dd>([^<]+)</dd>"));
    }
}
