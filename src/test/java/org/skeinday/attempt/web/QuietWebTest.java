package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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

/** Days of other kinds: outside help not allowed, and officials elsewhere who time. */
@Timeout(60)
class QuietWebTest {
    private static final String EVENT = "Saltmarsh Rotor Day";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private FilledForms forms;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 21);
        forms = new FilledForms(laptop);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private Visitor joined(String role, String pin) throws Exception {
        return Demo.joined(app, role, pin, 22);
    }

    private void land(Visitor who, String attempt, long ms) throws Exception {
        ObjectNode content = Json.MAPPER.createObjectNode();
        content.put("attempt", attempt).put("slot", 1).put("ms", ms);
        who.taps(Json.MAPPER.createArrayNode().add(Visitor.tap(who.newId(), "watch.landing", content)));
    }

    @Test
    void under_none_no_page_shows_advice_or_others_readings_and_the_record_says_from_when_to_when() throws Exception {
        String before = "From the call on it is quiet: no advice until the attempt is closed.";
        assertFalse(laptop.get("/now").body().contains(before));
        forms.save("terms", forms.row("terms", EVENT), Map.of("outside-help", "none"));
        assertTrue(laptop.get("/now").body().contains(before));
        assertTrue(laptop.get("/now").body().contains("crank turns, then walk in"), "before the call all may help");
        assertTrue(laptop.get("/day").body().contains("Propose a plan"));
        String motor = forms.row("motors", "A3").replaceFirst(".*/", "");
        Visitor coach = joined("coach", Demo.PIN);
        String entry = laptop.get("/now").body().replaceAll("(?s)^.*?name=\"entry\" value=\"([^\"]+)\".*$", "$1");
        assertTrue(laptop.get("/choice/" + entry).body().contains("This is what is missing"), "no breaks, no choice");
        String attempt = CalledForTests.call(laptop);
        land(laptop, attempt, 61_210);
        List<Visitor> everybody =
                List.of(laptop, coach, joined("captain", ""), joined("helper", ""), joined("viewer", ""));
        for (Visitor who : everybody) {
            String now = who.get("/now").body();
            assertTrue(now.contains("Outside help is not allowed until this attempt is closed"), now);
            for (String advice : List.of("walk in", "<dt>turns limit", "launch with", "61.21", "1:01.21", "spare")) {
                assertFalse(now.contains(advice), advice + " in " + now);
            }
            var plan = who.get("/attempt/plan?motor=" + motor);
            assertEquals(403, plan.statusCode());
            assertTrue(plan.body().contains("<h1>Quiet until the attempt is closed</h1>"), plan.body());
            assertEquals(403, who.get("/choice/" + entry).statusCode());
            assertFalse(who.get("/results").body().contains("1:01"), "nothing before the sign-off");
        }
        String day = laptop.get("/day").body();
        assertFalse(day.contains("Propose a plan"), day);
        assertTrue(day.contains("It is quiet until the attempt is closed"), day);
        assertFalse(joined("timekeeper", "").get("/timing").body().contains("1:01.21"));
        var written = coach.form("/attempt/close", Map.of("attempt", attempt));
        assertEquals(403, written.statusCode());
        assertTrue(
                written.body().contains("the coach&#39;s device writes nothing")
                        || written.body().contains("the coach's device writes nothing"),
                written.body());
        assertEquals(
                403,
                coach.form("/watch/take", Map.of("attempt", attempt, "slot", "2"))
                        .statusCode());
        var doubted = laptop.form("/attempt/close", Map.of("attempt", attempt));
        assertEquals(422, doubted.statusCode(), "one watch of two");
        assertFalse(doubted.body().contains("1:01.21"), "not even when it asks why");
        Map<String, String> why = Map.of("attempt", attempt, "why", "The other watch stopped");
        assertEquals(200, laptop.form("/attempt/close", why).statusCode());
        assertTrue(laptop.get("/now").body().contains("walk in"), "from the sign-off on all may help again");
        assertTrue(laptop.get("/results")
                .body()
                .matches("(?s).*Skeinday gave no help from \\d\\d:\\d\\d to \\d\\d:\\d\\d.*"));
        String journal = Files.readString(root.resolve("day/journal.jsonl"));
        assertTrue(journal.contains("quiet.began") && journal.contains("quiet.ended"));
    }

    /** Every page that there is, as every role, on a day elsewhere with a time announced. */
    @Test
    void no_page_of_anybody_leaks_advice_or_readings_while_it_is_quiet() throws Exception {
        forms.save("events", forms.row("events", EVENT), Map.of("kind", "visiting"));
        forms.save("terms", forms.row("terms", EVENT), Map.of("outside-help", "none"));
        Visitor coach = joined("coach", Demo.PIN);
        String attempt = CalledForTests.call(laptop);
        land(laptop, attempt, 61_210);
        laptop.form("/attempt/announce", Map.of("attempt", attempt, "announced", "1:00.9"));
        forms.save("terms", forms.row("terms", EVENT), Map.of("outside-help", "free")); // too late for this attempt
        String other = laptop.get("/now").body().replaceAll("(?s).*name=\"entry\" value=\"([^\"]+)\".*", "$1");
        assertEquals(
                200, laptop.form("/attempt/call", Map.of("entry", other)).statusCode(), "nor does another call end it");
        for (Visitor who : List.of(laptop, coach, joined("captain", ""), joined("helper", ""), joined("viewer", ""))) {
            for (String path : PAGES) {
                var page = who.get(path.replace("ATTEMPT", attempt));
                for (String secret :
                        List.of("61.21", "1:01.21", "less than ours", "walk in", "Turns limit", "2:05.83")) {
                    assertFalse(page.body().contains(secret), secret + " on " + path + ": " + page.body());
                }
            }
            assertTrue(who.get("/now").body().contains("Outside help is not allowed"));
        }
        for (String path : List.of("/export.zip", "/export.xlsx", "/export.json", "/tables.zip", "/tables.xlsx")) {
            assertEquals(403, coach.get(path).statusCode(), path);
        }
        for (String path : List.of("/key-in", "/prepare/terms/save", "/inspection", "/practice", "/attempt/close")) {
            assertEquals(403, coach.form(path, Map.of("attempt", attempt)).statusCode(), path);
        }
    }

    /** Own readings are shown to their own timekeeper on Timing, so that page is not among them for the laptop. */
    private static final List<String> PAGES = List.of(
            "/",
            "/now",
            "/results",
            "/results/part",
            "/results/wall",
            "/attempt/ATTEMPT",
            "/prepare/rules",
            "/attempt/plan?motor=x",
            "/cards",
            "/dispute/ATTEMPT",
            "/practice",
            "/making",
            "/log",
            "/prepare",
            "/prepare/flights",
            "/prepare/motors",
            "/tags",
            "/inspection",
            "/key-in",
            "/devices",
            "/join");

    @Test
    void a_slip_in_the_announced_time_gives_no_new_time_to_protest() throws Exception {
        forms.save("events", forms.row("events", EVENT), Map.of("kind", "visiting"));
        String attempt = CalledForTests.call(laptop);
        land(laptop, attempt, 61_210);
        String until = until(laptop.form("/attempt/announce", Map.of("attempt", attempt, "announced", "1:09"))
                .body());
        String again = until(laptop.form("/attempt/announce", Map.of("attempt", attempt, "announced", "1:00.9"))
                .body());
        assertEquals(until, again);
    }

    private static String until(String now) {
        return now.replaceAll("(?s).*To protest: <b data-until=\"(\\d+)\".*", "$1");
    }

    @Test
    void an_attempt_that_is_given_up_ends_the_quiet_as_well() throws Exception {
        forms.save("terms", forms.row("terms", EVENT), Map.of("outside-help", "none"));
        String attempt = CalledForTests.call(laptop);
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "A rib broke"));
        assertFalse(laptop.get("/now").body().contains("Outside help is not allowed"));
        assertTrue(Files.readString(root.resolve("day/journal.jsonl")).contains("quiet.ended"));
    }

    @Test
    void elsewhere_the_announced_time_counts_and_stands_beside_our_own_watches() throws Exception {
        forms.save("events", forms.row("events", EVENT), Map.of("kind", "visiting"));
        String attempt = CalledForTests.call(laptop);
        land(laptop, attempt, 61_210);
        var early = laptop.form("/attempt/close", Map.of("attempt", attempt));
        assertEquals(422, early.statusCode());
        assertTrue(early.body().contains("Type in the time that the officials have announced"));
        var wrong = laptop.form("/attempt/announce", Map.of("attempt", attempt, "announced", "1:61"));
        assertEquals(422, wrong.statusCode());
        assertTrue(wrong.body().contains("value=\"1:61\"") && wrong.body().contains("two digits of seconds"));
        var noted = laptop.form("/attempt/announce", Map.of("attempt", attempt, "announced", "1:00.9"));
        assertEquals(200, noted.statusCode(), noted.body());
        assertTrue(
                noted.body().contains("1:00.90; ours 1:01.21, by the rule 1:01.2: 0.30 s less than ours"),
                noted.body());
        assertTrue(noted.body().contains("To protest: <b data-until="), "30 minutes by the terms");
        String dispute = laptop.get("/dispute/" + attempt).body();
        for (String words : List.of("1:01.21", "1:00.90", "contact 5.2 | protest 9.1", "Witness", "To protest until")) {
            assertTrue(dispute.contains(words), words + " in " + dispute);
        }
        assertEquals(
                200, laptop.form("/attempt/close", Map.of("attempt", attempt)).statusCode());
        String results = laptop.get("/results").body();
        assertTrue(results.contains("1:00.9"), results);
        assertTrue(results.contains("announced by the officials: 1:00.90; our watches: 1:01.21"), results);
    }
}
