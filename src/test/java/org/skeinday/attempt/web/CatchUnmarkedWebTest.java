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

/** The captain saw a model caught and no watch has marked it: its time is typed as it was then, or no watch has it. */
@Timeout(120)
class CatchUnmarkedWebTest {
    private static final String KEY = "No watch has it: ";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor phone;
    private String attempt;
    private String entry;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 98);
        phone = Demo.joined(app, "timekeeper", "", 99);
        entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
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

    private HttpResponse<String> form(Visitor who, String address, Map<String, String> more) throws Exception {
        Map<String, String> all = new HashMap<>(Map.of("attempt", attempt));
        all.putAll(more);
        return who.form(address, all);
    }

    private String taken(String address, Map<String, String> more) throws Exception {
        return taken(laptop, address, more);
    }

    private String taken(Visitor who, String address, Map<String, String> more) throws Exception {
        HttpResponse<String> answer = form(who, address, more);
        assertEquals(200, answer.statusCode(), answer.body());
        return answer.body();
    }

    private static Map<String, String> typed(String slot, String time, String at) {
        return Map.of("typed-slot", slot, "typed", time, "typed-at", at);
    }

    private void caught() throws Exception {
        taken("/attempt/aloft", Map.of("to", "caught"));
        taken("/attempt/aloft", Map.of("to", "still-held"));
    }

    private void rules(String ifCaught, String again) throws Exception {
        var forms = new FilledForms(laptop);
        var saved = forms.save(
                "rules",
                forms.row("rules", "Saltmarsh Rotor Day"),
                Map.of("if-caught", ifCaught, "start-again", again, "held-watched", "", "held-deduct", ""));
        assertEquals(204, saved.statusCode(), saved.body());
    }

    private static void assertSays(String page, String words) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    private String record() throws Exception {
        return laptop.get("/attempt/" + attempt).body();
    }

    @Test
    void what_the_watches_showed_at_the_catch_is_typed_on_now_and_on_timing_and_the_rule_counts_on_from_there()
            throws Exception {
        caught();
        assertSays(laptop.get("/now").body(), "what it showed when it was caught");
        taken("/attempt/type-time", typed("1", "1:20.00", "landing"));
        assertSays(taken("/attempt/type-time", typed("2", "0:40.42", "catch")), "no mark of watch 1 says so");
        assertSays(phone.get("/timing/part?attempt=" + attempt).body(), "what it showed when it was caught");
        taken(phone, "/watch/type", typed("1", "0:44.38", "catch"));
        String now = taken(phone, "/watch/type", typed("1", "0:40.38", "catch")); // mistyped, and typed again
        assertFalse(now.contains("no mark of"), now);
        assertFalse(laptop.get("/now").body().contains("no mark of"));
        taken("/attempt/close", Map.of("why", "the window was opened by word of mouth"));
        assertSays(
                record(), "Caught at 0:40.38, still held after 10.00 s: the flight was over at 0:50.38, less 10.00 s");
        assertSays(record(), "1:20.00 – corrected or taken back");
        assertSays(laptop.get("/results").body(), ">0:40.4<");
    }

    @Test
    void where_the_flight_ends_at_the_catch_its_time_is_the_time() throws Exception {
        rules("ends", "no");
        caught();
        taken("/attempt/type-time", typed("1", "0:40.4", "catch"));
        taken("/attempt/type-time", typed("2", "0:40.4", "catch"));
        taken("/attempt/close", Map.of("why", "the window was opened by word of mouth"));
        assertSays(laptop.get("/results").body(), ">0:40.4<");
    }

    @Test
    void a_watch_that_has_no_time_of_it_is_said_so_and_where_none_has_it_the_rule_says_what_becomes_of_it()
            throws Exception {
        caught();
        taken("/attempt/type-time", typed("1", "1:20.00", "landing"));
        taken(phone, "/watch/type", typed("1", "", "none"));
        taken("/attempt/type-time", typed("2", "", "none"));
        String now = laptop.get("/now").body();
        assertSays(now, KEY + "void");
        assertEquals(
                422, form(laptop, "/attempt/close", Map.of("why", "so it is")).statusCode());
        taken("/attempt/aloft", Map.of("to", "no-watch"));
        assertSays(record(), "caught: no watch has the time of the catch");
        assertFalse(record().contains("uses up no attempt"), "the rules let nothing start again");
    }

    @Test
    void where_the_rules_let_it_start_again_it_is_flown_again_at_one_press() throws Exception {
        rules("less", "yes");
        caught();
        assertSays(laptop.get("/now").body(), KEY + "fly again");
        String next = taken("/attempt/aloft", Map.of("to", "no-watch"));
        assertSays(record(), "caught: no watch has the time of the catch; it uses up no attempt");
        assertSays(next, ", attempt 1, 2nd try");
    }

    @Test
    void where_the_clock_runs_on_nothing_of_it_is_asked_or_taken() throws Exception {
        rules("runs-on", "no");
        taken("/attempt/aloft", Map.of("to", "caught"));
        String now = taken("/attempt/move", Map.of("to", "landed"));
        assertFalse(now.contains(KEY), now);
        assertFalse(now.contains("when it was caught<"), now);
        HttpResponse<String> typed = form(laptop, "/attempt/type-time", typed("1", "0:40.4", "catch"));
        assertEquals(422, typed.statusCode());
        assertSays(typed.body(), "By the flight rules the clock runs on: type what the watch shows at the landing");
        assertEquals(
                422, form(laptop, "/attempt/aloft", Map.of("to", "no-watch")).statusCode());
    }

    private HttpResponse<String> keyIn(String who, String number, String at, String time) throws Exception {
        return laptop.form(
                "/key-in",
                Map.of(
                        "entry",
                        who,
                        "attempt",
                        number,
                        "motor",
                        "A3",
                        "watch-1",
                        time,
                        "watch-2",
                        time,
                        "times-at",
                        at));
    }

    @Test
    void a_card_says_which_of_both_its_watches_show() throws Exception {
        caught();
        HttpResponse<String> both = keyIn(entry, "1", "none", "0:40.4");
        assertEquals(422, both.statusCode());
        assertSays(both.body(), "No watch has the catch, but 2 have a time");
        assertEquals(200, keyIn(entry, "1", "catch", "0:40.4").statusCode());
        assertSays(laptop.get("/results").body(), ">0:40.4<");
        assertSays(record(), "less 10.00 s");
    }

    @Test
    void a_card_without_the_time_of_the_catch_ends_its_attempt_void_known_or_not() throws Exception {
        caught();
        assertEquals(200, keyIn(entry, "1", "none", "").statusCode());
        assertSays(record(), "caught: no watch has the time of the catch");
        HttpResponse<String> second = keyIn(entry, "2", "none", "");
        assertEquals(200, second.statusCode(), second.body());
        String sheet = laptop.get("/results").body();
        assertEquals(3, sheet.split("no watch has the time of the catch", -1).length, sheet);
    }
}
