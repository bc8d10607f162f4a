package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

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

/** A model that is caught, comes free or stays held, and one that is steered; the demo's day watches 10 s and takes them off. */
@Timeout(120)
class AloftWebTest {
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

    private HttpResponse<String> form(String address, Map<String, String> more) throws Exception {
        Map<String, String> all = new HashMap<>(Map.of("attempt", attempt));
        all.putAll(more);
        return laptop.form(address, all);
    }

    private String taken(String address, Map<String, String> more) throws Exception {
        HttpResponse<String> answer = form(address, more);
        assertEquals(200, answer.statusCode(), answer.body());
        return answer.body();
    }

    private String aloft(String what) throws Exception {
        return taken("/attempt/aloft", Map.of("to", what));
    }

    private static void assertSays(String page, String words) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    @Test
    void caught_it_shows_the_count_and_what_the_rules_make_of_it_until_it_is_free() throws Exception {
        String now = aloft("caught-by-person");
        assertSays(now, "Caught, held for <b data-since=");
        assertSays(
                now,
                "by somebody. By the rules over once it was held for 10 s, less 10 s: caught at 0:40 and held until"
                        + " 0:50 is 0:40; it does not start again");
        assertSays(now, "Still held</button>");
        assertFalse(now.contains("Caught by the building</button>"), "it is held already");
        String free = aloft("free");
        assertFalse(free.contains("Caught, held for"), free);
        assertSays(free, "by somebody, free again at ");
        assertSays(form("/attempt/aloft", Map.of("to", "free")).body(), "This attempt is in the air.");
    }

    @Test
    void still_held_the_flight_is_over_and_a_hand_watch_is_asked_about() throws Exception {
        aloft("caught");
        assertSays(aloft("still-held"), "aria-current=\"step\">landed<");
        for (String slot : new String[] {"1", "2"}) {
            taken("/attempt/type-time", Map.of("typed-slot", slot, "typed", "1:01.6" + slot));
        }
        assertSays(laptop.get("/now").body(), "no mark of watch 1, watch 2 says so");
        assertEquals(422, form("/attempt/close", Map.of("why", "")).statusCode());
        taken("/attempt/close", Map.of("why", "both took ten seconds off"));
        assertSays(laptop.get("/attempt/" + attempt).body(), "by the building, still held. By the rules over once");
        assertSays(laptop.get("/results").body(), ". Aloft: caught at 0:0");
    }

    @Test
    void a_steered_flight_says_nothing_of_model_and_motor() throws Exception {
        taken("/attempt/aloft", Map.of("to", "steered", "steered", "balloon"));
        aloft("caught");
        taken("/attempt/move", Map.of("to", "landed"));
        assertSays(laptop.get("/now").body(), "steered with a balloon");
        String winding = laptop.get("/winding/part?flight=" + attempt).body();
        assertSays(winding, "value=\"steered with a balloon\"");
        String evening = laptop.get("/evening/flight/" + attempt).body();
        assertSays(evening, "A flight that was steered says nothing of model and motor");
        assertFalse(evening.contains("It counts"), "no key that would do nothing");
        var word = laptop.form(
                "/evening/word",
                Map.of("flight", attempt, "verdict", "counts", "reason", "", "seen", "steered with a balloon"));
        assertSays(word.body(), "It was steered: steered with a balloon");
    }

    private void rules(String ifCaught, String again) throws Exception {
        var forms = new FilledForms(laptop);
        var saved = forms.save(
                "rules",
                forms.row("rules", "Saltmarsh Rotor Day"),
                Map.of("if-caught", ifCaught, "start-again", again, "held-watched", "", "held-deduct", ""));
        assertEquals(204, saved.statusCode(), saved.body());
    }

    @Test
    void where_the_rules_let_it_a_caught_flight_starts_again_and_keeps_its_number_for_the_next_try() throws Exception {
        rules("ends", "yes");
        String now = aloft("caught");
        assertSays(now, "the flight is over when it is caught: caught at 0:40 is 0:40; it may start again");
        assertSays(now, "Start again</button>");
        aloft("still-held");
        String next = aloft("start-again");
        assertSays(laptop.get("/attempt/" + attempt).body(), "caught: started again; it uses up no attempt");
        assertSays(next, ", attempt 1, 2nd try");
        String entry = CalledForTests.value(next, "name=\"entry\" value=\"([^\"]+)\"");
        String again = laptop.form("/attempt/call", Map.of("entry", entry, "number", "2"))
                .body();
        assertSays(again, ", attempt 1, 2nd try");
        assertEquals(422, form("/attempt/aloft", Map.of("to", "start-again")).statusCode(), "once");
        String sheet = laptop.get("/results").body();
        assertSays(sheet, "2nd try");
        assertFalse(sheet.contains("attempt 2"), sheet);
    }

    /** The day's rule has it watched for ten seconds: it was caught a moment ago, and flew on. */
    @Test
    void a_flight_that_came_free_in_time_does_not_start_again() throws Exception {
        rules("less", "yes");
        String caught = aloft("caught");
        assertFalse(caught.contains("Start again</button>"), "not before it was watched");
        HttpResponse<String> early = form("/attempt/aloft", Map.of("to", "start-again"));
        assertEquals(422, early.statusCode());
        assertSays(early.body(), "It was not held for so long that its flight is over.");
        aloft("free");
        taken("/attempt/move", Map.of("to", "landed"));
        assertEquals(422, form("/attempt/aloft", Map.of("to", "start-again")).statusCode());
        assertFalse(laptop.get("/now").body().contains("Start again</button>"));
    }

    @Test
    void where_the_rules_do_not_let_it_nothing_starts_again_and_the_rule_is_said() throws Exception {
        assertSays(form("/attempt/aloft", Map.of("to", "start-again")).body(), "This attempt is in the air.");
        String now = aloft("caught");
        assertFalse(now.contains("Start again</button>"), now);
        HttpResponse<String> refused = form("/attempt/aloft", Map.of("to", "start-again"));
        assertEquals(422, refused.statusCode());
        assertSays(refused.body(), "does not start again: over once it was held for 10 s");
        rules("runs-on", "yes");
        String runsOn = form("/attempt/aloft", Map.of("to", "start-again")).body();
        assertSays(runsOn, "does not start again: the clock runs until the landing");
        assertFalse(laptop.get("/now").body().contains("Start again</button>"), "nothing ended it early");
    }

    @Test
    void nothing_of_a_release_that_was_none_stays_aloft() throws Exception {
        aloft("caught");
        taken("/attempt/take-back", Map.of());
        String now = taken("/attempt/move", Map.of("to", "released"));
        assertFalse(now.contains("Caught, held for"), now);
    }
}
