package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
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

/** A flight is judged once, when its time is taken: rules and windows that change later say nothing of it. */
@Timeout(120)
class RulesChangedWebTest {
    private static final String EVENT = "Saltmarsh Rotor Day";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String attempt;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 98);
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String motor = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        taken("/attempt/move", Map.of("to", "released"));
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void taken(String address, Map<String, String> more) throws Exception {
        Map<String, String> all = new HashMap<>(Map.of("attempt", attempt));
        all.putAll(more);
        HttpResponse<String> answer = laptop.form(address, all);
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private void rules(Map<String, String> change) throws Exception {
        var forms = new FilledForms(laptop);
        var saved = forms.saveFrozen("rules", forms.row("rules", EVENT), change);
        assertEquals(204, saved.statusCode(), saved.body());
    }

    private void flown() throws Exception {
        taken("/attempt/aloft", Map.of("to", "caught"));
        taken("/attempt/aloft", Map.of("to", "still-held"));
        taken("/attempt/collision", Map.of("to", "told"));
        taken("/attempt/collision", Map.of("to", "keep"));
        taken("/attempt/type-time", Map.of("typed-slot", "1", "typed", "1:01.61"));
        taken("/attempt/type-time", Map.of("typed-slot", "2", "typed", "1:01.65"));
        taken("/attempt/close", Map.of("why", "both took ten seconds off"));
    }

    /** Every rule that says something of one flight, the minimum, and the window; a step is no verdict and moves times. */
    private void everythingChanges() throws Exception {
        rules(Map.of(
                "if-caught",
                "ends",
                "start-again",
                "yes",
                "held-watched",
                "",
                "held-deduct",
                "",
                "repeats",
                "3",
                "inside-the-window",
                "landing",
                "time-to-choose",
                "0:05",
                "without-a-choice",
                "again"));
        var forms = new FilledForms(laptop);
        var event = forms.saveFrozen("events", forms.row("events", EVENT), Map.of("minimum", "1:30"));
        assertEquals(204, event.statusCode(), event.body());
        forms.window("Curlew", Clock.systemDefaultZone(), 90, 120);
    }

    /** What is said of the attempt, without keys, what the page asks, and that its window was moved. */
    private String told(String page) throws Exception {
        String body = laptop.get(page).body();
        String judged = body.replaceAll("<div><dt>window moved</dt><dd>[^<]*</dd></div>", "");
        return Stream.of(judged.split("\n"))
                .filter(line -> line.contains("<dt>") || line.contains("<td") || line.contains("href=\"/attempt/"))
                .reduce("", (a, b) -> a + "\n" + b);
    }

    @Test
    void what_was_judged_of_a_closed_attempt_stays_whatever_changes_and_over_a_rebuild_too() throws Exception {
        flown();
        String record = told("/attempt/" + attempt);
        String sheet = told("/results");
        String wall = told("/results/wall");
        assertTrue(record.contains("By the rules over once it was held for 10 s"), record);
        everythingChanges();
        assertEquals(record, told("/attempt/" + attempt));
        assertEquals(sheet, told("/results"));
        assertEquals(wall, told("/results/wall"));
        app.close();
        try (Stream<Path> files = Files.list(root.resolve("day"))) {
            for (Path file : files.filter(f -> f.getFileName().toString().contains(".mv.db"))
                    .toList()) {
                Files.delete(file);
            }
        }
        app = Demo.startEmpty(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 99);
        assertEquals(record, told("/attempt/" + attempt));
        assertEquals(sheet, told("/results"));
    }

    @Test
    void a_person_who_opens_it_again_with_a_reason_has_it_judged_by_the_rules_of_now() throws Exception {
        flown();
        String record = told("/attempt/" + attempt);
        everythingChanges();
        taken("/attempt/" + attempt + "/reopen", Map.of("reason", "the rules were typed wrongly", "pin", Demo.PIN));
        taken("/attempt/close", Map.of("why", "both stopped when it was caught"));
        String again = told("/attempt/" + attempt);
        assertNotEquals(record, again);
        assertTrue(again.contains("By the rules the flight is over when it is caught"), again);
        String sheet = laptop.get("/results").body();
        assertTrue(sheet.contains("below 1:30: not official, may be repeated"), sheet);
    }

    @Test
    void what_was_void_keeps_the_words_of_its_day_too() throws Exception {
        taken("/attempt/aloft", Map.of("to", "caught"));
        taken("/attempt/move", Map.of("to", "landed"));
        taken("/attempt/give-up", Map.of("reason", "wrong model"));
        String record = told("/attempt/" + attempt);
        everythingChanges();
        assertEquals(record, told("/attempt/" + attempt));
    }
}
