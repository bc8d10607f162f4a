package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.prepare.FilledForms;

/** On a hosted day nobody times their own team's entry, unless the chief allows it. */
@Timeout(60)
class OwnEntryWebTest {
    @TempDir
    Path root;

    private static void says(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    @Test
    void who_is_of_the_entrys_team_gets_no_watch_of_it_before_the_chief_says_why_they_may() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 5);
            FilledForms forms = new FilledForms(laptop);
            String name = "Ines";
            CalledForTests.callOnly(laptop);
            String attempt =
                    CalledForTests.value(laptop.get("/timing/part").body(), "name=\"attempt\" value=\"([^\"]+)\"");
            String entry = CalledForTests.value(laptop.get("/timing/part").body(), "<h1>([^,]+), attempt 1");
            String team = CalledForTests.value(laptop.get("/results.csv").body(), "(?m)^[0-9]*," + entry + ",([^,]+),");
            Visitor ines = Demo.joined(app, "timekeeper", "", 6, Demo.person(app, name));
            Map<String, String> take = Map.of("attempt", attempt, "slot", "1");
            assertEquals(
                    204,
                    forms.save(
                                    "crew",
                                    forms.row("crew", name),
                                    Map.of("team", " " + team.toUpperCase(java.util.Locale.ROOT)))
                            .statusCode());
            says(422, "nobody times their own team", ines.form("/watch/take", take));
            assertTrue(ines.form("/watch/take", take).body().contains("The chief allows it"), "how it goes on");
            says(
                    422,
                    "nobody times their own team",
                    ines.form(
                            "/watch/take", Map.of("attempt", attempt, "slot", "1", "allowed", "there is nobody else")));
            String wrong = Demo.PIN.startsWith("1") ? "222222" : "111111";
            assertEquals(
                    422,
                    ines.form("/watch/take", Map.of("attempt", attempt, "slot", "1", "allowed", "x", "pin", wrong))
                            .statusCode());
            assertEquals(
                    422,
                    ines.form("/watch/take", Map.of("attempt", attempt, "slot", "1", "allowed", " ", "pin", Demo.PIN))
                            .statusCode());
            assertFalse(laptop.get("/timing/part").body().contains("taken by"), "nobody has one");
            says(
                    200,
                    "data-slot=\"1\"",
                    ines.form(
                            "/watch/take",
                            Map.of(
                                    "attempt",
                                    attempt,
                                    "slot",
                                    "1",
                                    "allowed",
                                    "there is nobody else in the hall",
                                    "pin",
                                    Demo.PIN)));
            says(
                    200,
                    "times its own team; the chief allowed it: there is nobody else in the hall",
                    laptop.get("/attempt/" + attempt));
        }
    }

    @Test
    void who_is_of_another_team_or_of_none_that_is_said_takes_a_watch() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 5);
            FilledForms forms = new FilledForms(laptop);
            CalledForTests.callOnly(laptop);
            String attempt =
                    CalledForTests.value(laptop.get("/timing/part").body(), "name=\"attempt\" value=\"([^\"]+)\"");
            Visitor ines = Demo.joined(app, "timekeeper", "", 6, Demo.person(app, "Ines"));
            Visitor nobody = Demo.joined(app, "timekeeper", "", 7);
            forms.save("crew", forms.row("crew", "Ines"), Map.of("team", "Some other team"));
            says(200, "data-slot=\"1\"", ines.form("/watch/take", Map.of("attempt", attempt, "slot", "1")));
            says(200, "data-slot=\"2\"", nobody.form("/watch/take", Map.of("attempt", attempt, "slot", "2")));
        }
    }
}
