package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
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
import org.skeinday.browser.SteppedClock;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Watches that are taken over in the air, stopped twice, or say what the server's own moments deny. */
@Timeout(60)
class WatchInTroubleWebTest {
    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private Visitor one;
    private Visitor two;
    private Visitor three;
    private String attempt = "";
    /** By the devices, which know the laptop's clock: what comes in later was pressed then. */
    private long pressedMs;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        laptop = new Visitor(app.port(), "", 71);
        new FilledForms(laptop).window("Curlew", clock, 0, 10);
        one = Demo.joined(app, "timekeeper", "", 72);
        two = Demo.joined(app, "timekeeper", "", 73);
        three = Demo.joined(app, "timekeeper", "", 74);
        CalledForTests.callOnly(laptop);
        attempt = CalledForTests.letWind(laptop);
        form(laptop, 200, "/attempt/move", Map.of("to", "winding"));
        form(laptop, 200, "/attempt/move", Map.of("to", "holding"));
        form(one, 200, "/watch/take", Map.of("slot", "1"));
        form(two, 200, "/watch/take", Map.of("slot", "2"));
        pressedMs = clock.millis();
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String form(Visitor who, int status, String address, Map<String, String> more) throws Exception {
        Map<String, String> fields = new HashMap<>(more);
        fields.put("attempt", attempt);
        HttpResponse<String> answer = who.form(address, fields);
        assertEquals(status, answer.statusCode(), answer.body());
        return answer.body();
    }

    private ObjectNode tap(int slot) {
        return Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put("slot", slot)
                .put("serverMs", pressedMs)
                .put("boundMs", 5);
    }

    private void release(Visitor who, int slot) throws Exception {
        assertEquals("saved", who.tap("watch.release", tap(slot)).path("state").asText());
    }

    private void landing(Visitor who, int slot, long ms) throws Exception {
        landing(who, tap(slot), ms);
    }

    private static void landing(Visitor who, ObjectNode tap, long ms) throws Exception {
        assertEquals(
                "saved",
                who.tap("watch.landing", tap.put("ms", ms)).path("state").asText());
    }

    private void after(long ms) {
        clock.stepBy(Duration.ofMillis(ms));
        pressedMs += ms;
    }

    private static void says(String words, String page) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    private String now() throws Exception {
        return laptop.get("/now?attempt=" + attempt).body();
    }

    /** Taken over 14 s after the release, pressed for it once more, and stopped. */
    private void takenOver() throws Exception {
        release(one, 1);
        after(14_000);
        form(three, 200, "/watch/take", Map.of("slot", "1", "over", "yes"));
    }

    @Test
    void who_takes_a_watch_in_the_air_is_told_that_only_the_landing_counts() throws Exception {
        assertFalse(three.get("/timing/part").body().contains("only landing counts"), "not in the air yet");
        release(one, 1);
        after(14_000);
        says("only landing counts", three.get("/timing/part").body());
        form(three, 200, "/watch/take", Map.of("slot", "1", "over", "yes"));
        says("data-aloft=\"1", three.get("/timing/part").body());
        says("data-aloft=\"0\"", two.get("/timing/part").body());
        form(one, 200, "/watch/take", Map.of("slot", "1", "over", "yes"));
        says("data-aloft=\"0\"", one.get("/timing/part").body()); // it pressed for the release itself
    }

    @Test
    void a_partial_reading_never_counts_by_itself_and_a_release_pressed_there_is_kept() throws Exception {
        takenOver();
        release(three, 1);
        after(900);
        landing(three, 1, 900);
        says("state now\">in the air<", now()); // pressed twice within a second: nothing has landed
        form(laptop, 200, "/watch/judge", Map.of("slot", "2", "verdict", "failed", "judged", "its battery is flat"));
        after(45_100);
        landing(three, tap(1).put("partial", true), 60_000);
        String asked = form(laptop, 422, "/attempt/close", Map.of("why", "there is no other"));
        says("A watch that was taken over in the air never counts by itself.", asked);
        says("Watch 1 was taken over in the air: its 1:00.00 is partial and does not count by itself.", now());
        String record = laptop.get("/attempt/" + attempt).body();
        says("1:00.00, partial: taken over in the air", record);
        says("pressed for a release that had been before: no release", record);
    }

    @Test
    void a_person_may_say_that_a_partial_reading_counts_and_why() throws Exception {
        takenOver();
        after(46_000);
        landing(three, 1, 46_000); // a page that pressed its own release
        landing(two, 2, 60_000);
        form(laptop, 422, "/attempt/close", Map.of("why", ""));
        form(laptop, 200, "/watch/judge", Map.of("slot", "1", "verdict", "left-out", "judged", "only the landing"));
        form(laptop, 200, "/attempt/close", Map.of("why", "one watch saw all of it"));
        String record = laptop.get("/attempt/" + attempt).body();
        says("0:46.00, partial: taken over in the air", record);
        says("1:00.00", record);
    }

    @Test
    void what_the_watch_of_before_brings_late_counts_before_a_partial_one_and_both_are_shown() throws Exception {
        takenOver();
        after(46_000);
        landing(three, tap(1).put("partial", true), 60_050);
        landing(one, 1, 60_000);
        landing(two, 2, 60_020);
        String page = now();
        says("Watch 1 has sent 1:00.05 and 1:00.00, none as a correction: the whole one would count.", page);
        says("watch 1, taken over in the air: 1:00.05", page);
        says("watch 1, as it was pressed: 1:00.00 (counts now)", page);
        String whole =
                CalledForTests.value(page, "<option value=\"([^\"]+)\"[^>]*>watch 1, as it was pressed: 1:00.00");
        form(
                laptop,
                200,
                "/watch/judge",
                Map.of("reading", whole, "slot", "2", "verdict", "", "judged", "it saw the release"));
        form(laptop, 200, "/attempt/close", Map.of("why", ""));
        says(
                "1:00.05, partial: taken over in the air",
                laptop.get("/attempt/" + attempt).body());
    }

    @Test
    void a_time_that_is_shorter_than_the_servers_own_moments_is_asked_about() throws Exception {
        release(one, 1);
        release(two, 2);
        after(61_000);
        landing(one, 1, 20_000);
        landing(two, 2, 61_000);
        says(
                "Watch 1 says 0:20.00, but by the laptop's clock 1:01.0 passed between its release and its landing.",
                now());
        form(laptop, 422, "/attempt/close", Map.of("why", ""));
        says(
                "lie 41.0 s more apart than it says",
                laptop.get("/attempt/" + attempt).body());
    }

    @Test
    void a_stop_a_tenth_after_the_release_moves_nothing_whatever_time_it_reports() throws Exception {
        release(one, 1);
        release(two, 2);
        after(100);
        landing(one, 1, 600_000);
        says("state now\">in the air<", now());
        after(60_900);
        landing(two, 2, 61_000);
        String said = now();
        says("Watch 1 says 10:00.00, but when that came in, 0:0", said);
        says(" had passed since the release. Ask its timekeeper.", said);
        form(laptop, 422, "/attempt/close", Map.of("why", ""));
    }

    @Test
    void clocks_that_are_known_to_a_second_say_nothing_of_a_second() throws Exception {
        release(one, 1);
        release(two, 2);
        after(61_000);
        landing(one, 1, 60_400);
        landing(two, 2, 60_500);
        form(laptop, 200, "/attempt/close", Map.of("why", ""));
    }
}
