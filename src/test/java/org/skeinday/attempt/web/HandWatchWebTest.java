package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
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
import org.skeinday.browser.SteppedClock;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Watches that cannot tap, watches that are taken out, and windows that move when all is flown. */
@Timeout(60)
class HandWatchWebTest {
    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private Visitor one;
    private Visitor two;
    private String attempt;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        laptop = new Visitor(app.port(), "", 41);
        new FilledForms(laptop).window("Curlew", clock, 0, 10);
        CalledForTests.callOnly(laptop);
        attempt = CalledForTests.letWind(laptop);
        one = Demo.joined(app, "timekeeper", "", 42);
        two = Demo.joined(app, "timekeeper", "", 43);
        one.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        two.form("/watch/take", Map.of("attempt", attempt, "slot", "2"));
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private void tap(Visitor who, String kind, int slot, Integer ms) throws Exception {
        ObjectNode content = Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put("slot", slot)
                .put("serverMs", clock.millis())
                .put("boundMs", 5);
        String state = who.tap(kind, ms == null ? content : content.put("ms", ms))
                .path("state")
                .asText();
        assertEquals("saved", state, kind);
    }

    private static HttpResponse<String> typed(Visitor who, String post, String attempt, int slot, String time)
            throws Exception {
        return who.form(post, Map.of("attempt", attempt, "typed-slot", String.valueOf(slot), "typed", time));
    }

    private HttpResponse<String> close(String why) throws Exception {
        return laptop.form("/attempt/close", Map.of("attempt", attempt, "why", why));
    }

    private static void says(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    private String record() throws Exception {
        return laptop.get("/attempt/" + attempt).body();
    }

    @Test
    void a_hand_watch_is_typed_on_the_laptop_for_a_flight_that_a_device_has_timed() throws Exception {
        says(422, "What can be done now", typed(laptop, "/attempt/type-time", attempt, 2, "1:01.30"));
        tap(one, "watch.release", 1, null);
        clock.stepBy(Duration.ofMillis(61_000));
        tap(one, "watch.landing", 1, 61_000);
        says(200, "the time of watch 2", laptop.get("/now"));
        says(422, "is not a time", typed(laptop, "/attempt/type-time", attempt, 2, "1.01.30"));
        says(422, "watch 1 to 2", typed(laptop, "/attempt/type-time", attempt, 3, "1:01.30"));
        says(200, "2: 1:03.30", typed(laptop, "/attempt/type-time", attempt, 2, "1:03.30"));
        says(200, "waits for</dt><dd>the captain: the watches are in doubt", laptop.get("/now"));
        says(200, "2: 1:01.20", typed(laptop, "/attempt/type-time", attempt, 2, "1:01.20"));
        assertFalse(laptop.get("/now").body().contains("waits for"), "in place of the slip, with nothing to ask");
        assertEquals(200, close("").statusCode());
        assertTrue(record().contains("1:01.2"), record());
        assertTrue(record().contains("hand watch"), record());
    }

    /** What a device has timed and what was typed of the same watch: neither corrects the other, and typing anew helps nobody. */
    @Test
    void of_two_times_of_one_watch_a_person_chooses_one_and_both_stay_in_the_record() throws Exception {
        fly(61_000);
        says(200, "2: 1:01.30", typed(laptop, "/attempt/type-time", attempt, 2, "1:01.30"));
        String doubt = "Watch 2 has sent 1:01.05 and 1:01.";
        says(200, doubt + "30, none as a correction", laptop.get("/now"));
        says(200, doubt + "20, none", typed(laptop, "/attempt/type-time", attempt, 2, "1:01.20"));
        says(422, "Say what holds of watch 2, and why", choose("watch 2, as it was pressed: 1:01.05", ""));
        says(200, "2: 1:01.05", choose("watch 2, as it was pressed: 1:01.05", "The typed one is of another flight"));
        assertFalse(laptop.get("/now").body().contains("none as a correction"), "nothing is left to ask");
        says(200, "2: 1:01.20", choose("watch 2, as it was typed: 1:01.20", "It was of this flight after all"));
        assertFalse(laptop.get("/now").body().contains("none as a correction"));
        assertTrue(record().contains("1:01.05 – corrected, or another was chosen"), record());
        assertEquals(200, close("").statusCode());
        assertTrue(record().contains("1:01.2"), record());
    }

    @Test
    void a_late_time_of_a_device_is_asked_about_again_whatever_was_chosen_before() throws Exception {
        tap(one, "watch.release", 1, null);
        tap(two, "watch.release", 2, null);
        clock.stepBy(Duration.ofMillis(62_000));
        tap(one, "watch.landing", 1, 61_000);
        says(200, "2: 1:01.10", typed(laptop, "/attempt/type-time", attempt, 2, "1:01.10"));
        tap(two, "watch.landing", 2, 61_050);
        says(200, "Watch 2 has sent 1:01.10 and 1:01.05", laptop.get("/now"));
        says(200, "2: 1:01.10", choose("watch 2, as it was typed: 1:01.10", "It ran on in the pocket"));
        assertFalse(laptop.get("/now").body().contains("none as a correction"));
        tap(two, "watch.landing", 2, 61_070);
        says(200, "Watch 2 has sent 1:01.10 and 1:01.07", laptop.get("/now"));
        String gone = value(laptop.get("/now").body(), "<option value=\"([^\"]+)\"[^>]*>watch 2, as it was typed");
        says(
                409,
                "does not stand any more",
                laptop.form("/watch/judge", Map.of("attempt", attempt, "reading", gone + "x", "judged", "so")));
    }

    /** @param words of the offer on Now, as they begin */
    private HttpResponse<String> choose(String words, String why) throws Exception {
        String now = laptop.get("/now").body();
        String reading = value(now, "<option value=\"([^\"]+)\"[^>]*>" + Pattern.quote(words));
        String form = now.substring(now.indexOf("A watch has several times"));
        String seen = value(form, "name=\"seen\" value=\"([^\"]*)\"");
        return laptop.form("/watch/judge", Map.of("attempt", attempt, "reading", reading, "seen", seen, "judged", why));
    }

    @Test
    void a_hand_watch_alone_lands_a_flight_that_only_the_laptop_saw_go() throws Exception {
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released"));
        clock.stepBy(Duration.ofMillis(70_000));
        says(200, "Waits for the time of watch 1", typed(two, "/watch/type", attempt, 2, "1:02.00"));
        says(200, "landed", laptop.get("/now"));
        assertEquals(200, typed(one, "/watch/type", attempt, 1, "1:02.10").statusCode());
        assertEquals(200, close("Nobody saw the release").statusCode());
        assertTrue(record().contains("1:02.1"), record());
    }

    @Test
    void what_is_typed_after_the_end_is_kept_and_changes_no_official_time() throws Exception {
        fly(61_000);
        assertEquals(200, close("").statusCode());
        says(
                200,
                "came in after the closing",
                one.form("/attempt/" + attempt + "/type-time", Map.of("typed-slot", "1", "typed", "1:09.00")));
        assertTrue(laptop.get("/results").body().contains("1:01.0"), "the time that holds");
    }

    @Test
    void who_times_reads_no_other_watch_before_all_have_told_their_own() throws Exception {
        tap(one, "watch.release", 1, null);
        clock.stepBy(Duration.ofMillis(61_000));
        tap(two, "watch.landing", 2, 61_070);
        for (String page : new String[] {"/now", "/timing/part", "/attempt/" + attempt}) {
            assertFalse(
                    one.get(page).body().contains("1:01.07"),
                    page + ": " + one.get(page).body());
        }
        says(200, "1 has a reading", one.get("/now"));
        says(200, "2: 1:01.07", laptop.get("/now"));
        tap(one, "watch.landing", 1, 61_000);
        says(200, "2: 1:01.07", one.get("/now"));
    }

    @Test
    void a_watch_that_is_taken_out_moves_release_and_landing_to_those_that_count() throws Exception {
        tap(one, "watch.release", 1, null); // a slip: half a minute before the model went
        clock.stepBy(Duration.ofMillis(30_000));
        tap(two, "watch.release", 2, null);
        clock.stepBy(Duration.ofMillis(61_000));
        tap(one, "watch.landing", 1, 91_000);
        tap(two, "watch.landing", 2, 61_000);
        String early = value(record(), "<dt>released</dt><dd>([^<]+)<");
        laptop.form(
                "/watch/judge",
                Map.of("attempt", attempt, "slot", "1", "verdict", "failed", "judged", "It was pressed too early"));
        String late = value(record(), "<dt>released</dt><dd>([^<]+)<");
        assertEquals(30, Math.floorMod(seconds(late) - seconds(early), 3600), 1, early + " and " + late);
        laptop.form(
                "/watch/judge",
                Map.of("attempt", attempt, "slot", "1", "verdict", "counts", "judged", "It was right after all"));
        assertEquals(early, value(record(), "<dt>released</dt><dd>([^<]+)<"));
    }

    /** What the captain said of a reading stays with it: a time that is typed for the same watch later is another reading. */
    @Test
    void a_time_typed_for_a_watch_that_was_left_out_takes_no_verdict_over() throws Exception {
        tap(one, "watch.release", 1, null);
        tap(two, "watch.release", 2, null);
        clock.stepBy(Duration.ofMillis(10_300));
        tap(one, "watch.landing", 1, 10_300);
        clock.stepBy(Duration.ofMillis(8_100));
        tap(two, "watch.landing", 2, 18_400);
        says(
                200,
                "left out by the captain",
                laptop.form(
                        "/watch/judge",
                        Map.of(
                                "attempt",
                                attempt,
                                "slot",
                                "2",
                                "verdict",
                                "left-out",
                                "judged",
                                "it was pressed late")));
        clock.stepBy(Duration.ofMillis(5_000));
        says(200, "2: 0:10.52", typed(laptop, "/attempt/type-time", attempt, 2, "0:10.52"));
        assertEquals(200, close("").statusCode(), "both agree, nothing is asked");
        String said = record();
        assertTrue(said.contains("0:18.40 – left out by the captain: it was pressed late"), said);
        assertFalse(said.contains("0:10.52 –"), said);
        assertFalse(said.contains("watch 2, 0:10.52, left out"), said);
        assertFalse(said.contains("corrected or taken back"), said);
        assertTrue(said.contains("Watches 0:10.30, 0:10.52; longer 0:10.52"), said);
    }

    /** A time that cannot be is taken with a reason, and is a doubted number of its flight until somebody confirms it. */
    @Test
    void a_time_longer_than_had_passed_enters_no_fit_until_it_is_confirmed() throws Exception {
        tap(one, "watch.release", 1, null);
        tap(two, "watch.release", 2, null);
        clock.stepBy(Duration.ofMillis(17_000));
        tap(one, "watch.landing", 1, 30_100);
        tap(two, "watch.landing", 2, 30_200);
        says(422, "had passed since the release", close(""));
        assertEquals(200, close("both say so").statusCode());
        says(200, "is longer than had passed since the release", laptop.get("/evening/flight/" + attempt));
        says(200, "has numbers to be confirmed", laptop.get("/evening"));
    }

    private static int seconds(String clockTime) {
        String[] parts = clockTime.replaceAll("[^0-9:]", "").split(":");
        return Integer.parseInt(parts[1]) * 60 + Integer.parseInt(parts[2]);
    }

    @Test
    void a_window_that_is_moved_afterwards_changes_no_verdict() throws Exception {
        fly(61_000);
        assertEquals(200, close("").statusCode());
        String verdict = value(record(), "<dt>window</dt><dd>([^<]+)<");
        assertTrue(verdict.contains("inside the window"), verdict);
        new FilledForms(laptop).window("Curlew", clock, 30, 40);
        assertEquals(verdict, value(record(), "<dt>window</dt><dd>([^<]+)<"));
        assertFalse(laptop.get("/results").body().contains("before the window opens"), "nor on the sheet");
    }

    private void fly(int ms) throws Exception {
        tap(one, "watch.release", 1, null);
        tap(two, "watch.release", 2, null);
        clock.stepBy(Duration.ofMillis(ms));
        tap(one, "watch.landing", 1, ms);
        tap(two, "watch.landing", 2, ms + 50);
    }

    @Test
    void a_card_completes_the_attempt_that_is_not_over() throws Exception {
        laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding"));
        String entry = value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        Map<String, String> card = new HashMap<>(Map.of("entry", entry, "attempt", "1", "model", "Reed One"));
        card.putAll(Map.of("motor", "A3", "stop-count", "201", "watch-1", "1:43.61", "watch-2", "1:43.72"));
        says(200, "Saved from paper: Curlew, attempt 1", laptop.form("/key-in", card));
        String sheet = laptop.get("/results").body();
        assertTrue(sheet.contains("1:43.7") && sheet.contains("from paper"), sheet);
        assertTrue(record().contains("1:43.61") && record().contains("1:43.72"), record());
    }
}
