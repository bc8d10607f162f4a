package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
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
import org.skeinday.platform.record.Json;

/** The attempt's pages on the real server, on the demo's event: what is allowed, what is refused and in which words. */
@Timeout(30)
class AttemptWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 1);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private Visitor joined(String role, long seed) throws Exception {
        return Demo.joined(app, role, "", seed);
    }

    private static String found(String html, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(html);
        assertTrue(found.find(), pattern + " in " + html);
        return found.group(1);
    }

    private static String hidden(String html, String name) {
        return found(html, "name=\"" + name + "\" value=\"([^\"]*)\"");
    }

    /** The form that the card shows now, with more fields. */
    private Map<String, String> form(Map<String, String> more, String... names) throws Exception {
        String html = laptop.get("/now").body();
        Map<String, String> fields = new HashMap<>();
        for (String name : names) {
            fields.put(name, hidden(html, name));
        }
        fields.putAll(more);
        return fields;
    }

    private HttpResponse<String> call() throws Exception {
        return laptop.form("/attempt/call", form(Map.of(), "entry", "number"));
    }

    private HttpResponse<String> move(String to) throws Exception {
        if (to.equals("winding")) {
            CalledForTests.letWind(laptop);
        }
        return laptop.form("/attempt/move", form(Map.of("to", to), "attempt", "seen"));
    }

    private static ObjectNode watch(String attempt, int slot) {
        return Json.MAPPER.createObjectNode().put("attempt", attempt).put("slot", slot);
    }

    private static void assertSays(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    @Test
    void an_attempt_goes_through_its_states_and_the_watches_make_its_official_time() throws Exception {
        assertSays(200, "Start winding", call());
        assertSays(200, ">Wound</button>", move("winding"));
        assertSays(200, "Released", move("holding"));
        String attempt = form(Map.of(), "attempt").get("attempt");
        Visitor one = joined("timekeeper", 2);
        Visitor two = joined("timekeeper", 3);
        assertEquals(
                200,
                one.form("/watch/take", Map.of("attempt", attempt, "slot", "1")).statusCode());
        assertEquals(
                200,
                two.form("/watch/take", Map.of("attempt", attempt, "slot", "2")).statusCode());
        assertEquals(
                "saved",
                one.tap("watch.release", watch(attempt, 1)).path("state").asText());
        assertSays(200, "state now\">in the air<", laptop.get("/now"));
        assertEquals(
                "saved",
                one.tap("watch.landing", watch(attempt, 1).put("ms", 61_210))
                        .path("state")
                        .asText());
        assertEquals(
                "saved",
                two.tap("watch.landing", watch(attempt, 2).put("ms", 61_300))
                        .path("state")
                        .asText());
        assertSays(422, "outside the window", laptop.form("/attempt/close", form(Map.of(), "attempt", "seen")));
        var why = form(Map.of("why", "The organiser let us begin"), "attempt", "seen");
        assertSays(200, "attempt 2", laptop.form("/attempt/close", why));
        assertSays(200, "1:01.3", laptop.get("/results"));
    }

    @Test
    void a_form_about_a_state_that_is_no_longer_so_gets_409_with_what_changed_and_changes_nothing() throws Exception {
        call();
        Map<String, String> old = form(Map.of("to", "winding"), "attempt", "seen");
        assertSays(200, ">Wound</button>", move("winding"));
        assertSays(409, "was called, now it is winding", laptop.form("/attempt/move", old));
        old.put("reason", "it rains through the roof");
        var answer = laptop.form("/attempt/give-up", old);
        assertSays(409, "was called, now it is winding", answer);
        assertTrue(answer.body().contains("it rains through the roof"), "what was typed is kept");
        assertSays(200, ">Wound</button>", laptop.get("/now"));
    }

    @Test
    void an_official_time_is_not_taken_from_readings_that_nobody_has_seen() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        laptop.tap("watch.landing", watch(attempt, 1).put("ms", 61_210));
        Map<String, String> old = form(Map.of(), "attempt", "seen");
        laptop.tap("watch.landing", watch(attempt, 1).put("ms", 71_210));
        assertSays(409, "there were 1 readings, now there are 2", laptop.form("/attempt/close", old));
        assertSays(422, "say why", laptop.form("/attempt/close", form(Map.of(), "attempt", "seen")));
        var why = form(Map.of("why", "Both timekeepers asked"), "attempt", "seen");
        assertSays(200, "attempt 2", laptop.form("/attempt/close", why));
        assertSays(200, "Taken by the captain in doubt: Both timekeepers asked", laptop.get("/results"));
    }

    @Test
    void two_captains_who_call_the_same_entry_call_it_once() throws Exception {
        Map<String, String> one = form(Map.of(), "entry", "number");
        assertEquals(200, laptop.form("/attempt/call", new HashMap<>(one)).statusCode());
        assertSays(409, "attempt 1 was called meanwhile", laptop.form("/attempt/call", new HashMap<>(one)));
    }

    @Test
    void the_same_form_sent_twice_counts_once() throws Exception {
        Map<String, String> form = form(Map.of("act", laptop.newId()), "entry", "number");
        assertEquals(200, laptop.form("/attempt/call", form).statusCode());
        assertEquals(200, laptop.form("/attempt/call", form).statusCode());
        assertSays(
                409,
                "used before for something else",
                laptop.form(
                        "/attempt/move",
                        Map.of(
                                "act",
                                form.get("act"),
                                "attempt",
                                form(Map.of(), "attempt").get("attempt"),
                                "to",
                                "winding")));
    }

    @Test
    void a_wrong_state_an_unknown_id_and_a_missing_reason_are_refused_in_words_where_they_belong() throws Exception {
        assertSays(
                404,
                "There is no such entry; choose one of the list",
                laptop.form("/attempt/call", Map.of("entry", "x")));
        assertSays(
                404, "There is no such attempt", laptop.form("/attempt/move", Map.of("attempt", "x", "to", "winding")));
        String entry = form(Map.of(), "entry").get("entry");
        assertSays(
                422,
                "There is no such motor; choose one of the list",
                laptop.form("/attempt/call", Map.of("entry", entry, "motor", "x")));
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        assertSays(
                422,
                "This attempt is called. What can be done now: Start winding, Released",
                laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "landed")));
        assertSays(
                422,
                "This attempt is called. What can be done now",
                laptop.form("/attempt/close", Map.of("attempt", attempt)));
        assertSays(
                422,
                "Say why: it stays in the record",
                laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", " ")));
        String long401 = "r".repeat(401);
        var tooLong = laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", long401));
        assertSays(422, "this one has 401", tooLong);
        assertTrue(tooLong.body().contains(long401), "what was typed is kept");
    }

    @Test
    void two_timekeepers_cannot_take_one_watch_and_one_cannot_take_two() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        Visitor one = joined("timekeeper", 2);
        Visitor two = joined("timekeeper", 3);
        assertSays(200, "watch 1", one.form("/watch/take", Map.of("attempt", attempt, "slot", "1")));
        assertSays(
                422,
                "Watch 1 is taken by another device; take another",
                two.form("/watch/take", Map.of("attempt", attempt, "slot", "1")));
        assertSays(
                422,
                "This device already is watch 1",
                one.form("/watch/take", Map.of("attempt", attempt, "slot", "2")));
        for (String slot : List.of("0", "4", "x", "")) {
            assertSays(422, "A watch is 1, 2 or 3", two.form("/watch/take", Map.of("attempt", attempt, "slot", slot)));
        }
    }

    @Test
    void a_watch_whose_device_fails_is_taken_over_and_what_the_first_still_sends_is_kept() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        Visitor first = joined("timekeeper", 2);
        Visitor second = joined("timekeeper", 3);
        first.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        Map<String, String> over = Map.of("attempt", attempt, "slot", "1", "over", "yes");
        assertSays(200, "Take watch 1 over", second.get("/timing/part"));
        assertSays(200, "data-slot=\"1\"", second.form("/watch/take", over));
        assertSays(200, "Another device has taken this watch over", first.get("/timing/part"));
        assertSays(200, "data-slot=\"1\"", first.get("/timing/part"));
        for (Visitor who : List.of(second, first)) {
            long ms = who == first ? 61_250 : 61_210;
            assertEquals(
                    "saved",
                    who.tap("watch.landing", watch(attempt, 1).put("ms", ms))
                            .path("state")
                            .asText());
        }
        assertSays(200, "Watch 1 has sent 1:01.21 and 1:01.25, none as a correction", laptop.get("/now"));
        assertSays(200, "data-slot=\"1\"", first.form("/watch/take", over));
        assertFalse(first.get("/timing/part").body().contains("Another device has taken this watch over"));
        assertSays(200, "Another device has taken this watch over", second.get("/timing/part"));
    }

    @Test
    void a_tap_for_another_devices_watch_is_refused_for_itself_and_changes_nothing() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        Visitor one = joined("timekeeper", 2);
        Visitor two = joined("timekeeper", 3);
        one.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        JsonNode refused = two.tap("watch.landing", watch(attempt, 1).put("ms", 5));
        assertEquals("refused", refused.path("state").asText());
        assertTrue(refused.path("reason").asText().contains("not watch 1"), refused.toString());
        assertFalse(laptop.get("/now").body().contains("0:00.005"));
    }

    @Test
    void a_landing_longer_than_two_hours_or_less_than_nothing_is_refused() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        for (long ms : new long[] {-1, 7_200_001}) {
            JsonNode refused = laptop.tap("watch.landing", watch(attempt, 1).put("ms", ms));
            assertEquals("refused", refused.path("state").asText());
            assertTrue(refused.path("reason").asText().contains("0 ms to 2 hours"), refused.toString());
        }
    }

    @Test
    void a_landing_without_its_time_or_with_a_broken_one_is_refused_in_words() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        for (ObjectNode content : List.of(
                watch(attempt, 1),
                watch(attempt, 1).put("ms", 101.7),
                watch(attempt, 1).put("ms", "x"))) {
            JsonNode answer = laptop.tap("watch.landing", content);
            assertEquals("refused", answer.path("state").asText(), content.toString());
            assertTrue(answer.path("reason").asText().contains("'ms' is missing"), answer.toString());
        }
        JsonNode unknown =
                laptop.tap("watch.landing", watch(attempt, 1).put("ms", 5).put("colour", "red"));
        assertTrue(unknown.path("reason").asText().contains("no 'colour'"), unknown.toString());
    }

    @Test
    void a_watch_that_contradicts_itself_and_watches_far_apart_are_put_before_a_person() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "2"));
        laptop.tap("watch.landing", watch(attempt, 1).put("ms", 61_210));
        laptop.tap("watch.landing", watch(attempt, 2).put("ms", 61_510));
        assertFalse(laptop.get("/now").body().contains(" s apart, more than"), "0.3 s apart is usual");
        laptop.tap("watch.landing", watch(attempt, 2).put("ms", 61_511));
        String now = laptop.get("/now").body();
        assertTrue(now.contains("Watch 2 has sent 1:01.51 and 1:01.511, none as a correction"), now);
        assertTrue(now.contains("Watch 1: 1:01.21 and watch 2: 1:01.511 are 0.301 s apart, more than 0.3 s"), now);
    }

    @Test
    void a_watch_is_left_out_or_failed_by_the_captain_with_a_reason_that_stands_on_the_sheet() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "2"));
        laptop.tap("watch.landing", watch(attempt, 1).put("ms", 61_210));
        laptop.tap("watch.landing", watch(attempt, 2).put("ms", 65_000));
        Map<String, String> judge = Map.of("attempt", attempt, "slot", "2", "verdict", "left-out", "judged", "");
        assertSays(422, "Say what holds of watch 2, and why", laptop.form("/watch/judge", judge));
        Map<String, String> left = new HashMap<>(judge);
        left.put("judged", "Stopped at the wrong model");
        assertSays(200, "One watch is left", laptop.form("/watch/judge", left));
        assertSays(422, "say why", laptop.form("/attempt/close", form(Map.of(), "attempt", "seen")));
        left.put("verdict", "failed");
        left.put("judged", "Battery");
        assertSays(200, "watch 2 failed: Battery", laptop.form("/watch/judge", left));
        laptop.form("/attempt/close", form(Map.of("why", "The other agrees with the film"), "attempt", "seen"));
        String sheet = laptop.get("/results").body();
        assertTrue(sheet.contains("watch 2 failed: Battery. Released "), sheet);
        assertTrue(sheet.contains("Taken by the captain in doubt: The other agrees with the film"), sheet);
        assertSays(422, "between release and official time", laptop.form("/watch/judge", left));
    }

    @Test
    void the_rules_say_how_many_watches_there_are() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        assertSays(
                422,
                "The rules ask for watch 1 to 2",
                laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "3")));
        assertSays(404, "There is no such attempt", laptop.form("/watch/take", Map.of("attempt", "x", "slot", "1")));
    }

    @Test
    void a_release_that_comes_late_counts_from_when_it_was_made() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        long called = calledMs();
        laptop.tap(
                "watch.release", watch(attempt, 1).put("serverMs", called + 1).put("boundMs", 20));
        assertEquals(called + 1, releasedMs(), "made a moment after the call, whenever it came in");
    }

    @Test
    void a_release_that_cannot_be_true_counts_from_when_it_came_in() throws Exception {
        call();
        String attempt = form(Map.of(), "attempt").get("attempt");
        laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        laptop.tap("watch.release", watch(attempt, 1).put("serverMs", 5).put("boundMs", 20));
        assertTrue(releasedMs() >= calledMs(), "not in 1970");
    }

    private long calledMs() throws Exception {
        return last("calledAtMs");
    }

    private long releasedMs() throws Exception {
        return last("atMs");
    }

    /** The last value of this name in the journal's facts. */
    private long last(String name) throws Exception {
        long last = 0;
        for (String line : Files.readAllLines(root.resolve("day/journal.jsonl"))) {
            for (JsonNode found : Json.MAPPER.readTree(line).path("facts").findValues(name)) {
                last = found.asLong();
            }
        }
        return last;
    }

    @Test
    void a_form_without_the_number_of_its_entry_is_said_to_be_so() throws Exception {
        Map<String, String> form = form(Map.of("act", "zz"), "entry", "number");
        assertSays(400, "Load the page again", laptop.form("/attempt/call", form));
    }

    @Test
    void helpers_and_timekeepers_may_look_and_not_decide() throws Exception {
        for (String role : List.of("viewer", "helper", "timekeeper")) {
            Visitor device = joined(role, role.hashCode());
            var page = device.get("/");
            assertEquals(200, page.statusCode());
            assertFalse(page.body().contains("/attempt/call"), role + " sees no button to call");
            Map<String, String> form = form(Map.of(), "entry", "number");
            assertSays(403, "needs the role captain", device.form("/attempt/call", form));
        }
        assertSays(403, "needs the role timekeeper", joined("viewer", 9).get("/timing"));
    }

    @Test
    void a_page_that_has_the_newest_part_gets_304_and_the_newer_one_after_a_change() throws Exception {
        String tag = laptop.get("/results/part").headers().firstValue("ETag").orElseThrow();
        assertEquals(304, laptop.get("/results/part", "If-None-Match", tag).statusCode());
        call();
        laptop.form("/attempt/give-up", form(Map.of("reason", "a rib broke"), "attempt", "seen"));
        var newer = laptop.get("/results/part", "If-None-Match", tag);
        assertSays(200, "a rib broke", newer);
    }
}
