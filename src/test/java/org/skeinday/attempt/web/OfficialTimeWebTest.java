package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
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
import org.skeinday.browser.SteppedClock;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** From the ready handshake to the signed result, on the real server with a clock that the test sets. */
@Timeout(30)
class OfficialTimeWebTest {
    private static final String EVENT = "Saltmarsh Rotor Day";
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private FilledForms forms;
    private Visitor one;
    private Visitor two;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        laptop = new Visitor(app.port(), "", 31);
        forms = new FilledForms(laptop);
        openWindow();
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    /** The first window is open now. @return when it closes, epoch ms */
    private long openWindow() throws Exception {
        return forms.window("Curlew", clock, 0, 10)
                .atZone(ZoneId.systemDefault())
                .toInstant()
                .toEpochMilli();
    }

    private void rules(Map<String, String> more) throws Exception {
        HttpResponse<String> saved = forms.save("rules", forms.row("rules", EVENT), more);
        assertEquals(204, saved.statusCode(), saved.body());
    }

    private String now() throws Exception {
        return laptop.get("/").body();
    }

    private static String found(String html, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(html);
        assertTrue(found.find(), pattern + " in " + html);
        return found.group(1);
    }

    private static String hidden(String html, String name) {
        return found(html, "name=\"" + name + "\" value=\"([^\"]*)\"");
    }

    /** Called, wound and held; both watches are taken. @return the attempt's id */
    private String holding() throws Exception {
        String html = now();
        laptop.form("/attempt/call", Map.of("entry", hidden(html, "entry"), "number", hidden(html, "number")));
        String attempt = hidden(now(), "attempt");
        CalledForTests.letWind(laptop, attempt);
        move(attempt, "winding");
        move(attempt, "holding");
        if (one == null) {
            one = Demo.joined(app, "timekeeper", "", 32);
            two = Demo.joined(app, "timekeeper", "", 33);
        }
        one.form("/watch/take", Map.of("attempt", attempt, "slot", "1"));
        two.form("/watch/take", Map.of("attempt", attempt, "slot", "2"));
        return attempt;
    }

    private void move(String attempt, String to) throws Exception {
        HttpResponse<String> moved = laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to));
        assertEquals(200, moved.statusCode(), moved.body());
    }

    private ObjectNode watch(String attempt, int slot) {
        return Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put("slot", slot)
                .put("serverMs", clock.millis())
                .put("boundMs", 5);
    }

    private String saved(Visitor who, String kind, ObjectNode content) throws Exception {
        String id = who.newId();
        JsonNode answer = who.taps(Json.MAPPER.createArrayNode().add(Visitor.tap(id, kind, content)))
                .get(0);
        assertEquals("saved", answer.path("state").asText(), answer.toString());
        return id;
    }

    private String mark(Visitor who, String attempt, int slot, String what, Integer ms) throws Exception {
        ObjectNode content = watch(attempt, slot).put("what", what);
        return saved(who, "watch.mark", ms == null ? content : content.put("ms", ms));
    }

    private void fly(String attempt, long ms) throws Exception {
        saved(one, "watch.release", watch(attempt, 1));
        saved(two, "watch.release", watch(attempt, 2));
        clock.stepBy(Duration.ofMillis(ms));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", ms));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", ms + 50));
    }

    private HttpResponse<String> close(String attempt, String why) throws Exception {
        return laptop.form("/attempt/close", Map.of("attempt", attempt, "why", why));
    }

    private String flown(long ms) throws Exception {
        String attempt = holding();
        fly(attempt, ms);
        HttpResponse<String> closed = close(attempt, "");
        assertEquals(200, closed.statusCode(), closed.body());
        return attempt;
    }

    private static void assertSays(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    private static void assertSays(String words, String page) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    @Test
    void a_flight_that_a_watch_marked_touched_is_undecided_until_somebody_says() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        saved(two, "watch.release", watch(attempt, 2));
        mark(two, attempt, 2, "touched", 31_000);
        clock.stepBy(Duration.ofMillis(90_000));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 90_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 90_050));
        Map<String, String> told = Map.of("attempt", attempt, "remaining", "", "spoilt", "", "contact", "");
        Map<String, String> later = new HashMap<>(told);
        later.put("counts", "later");
        later.put("seen", "undecided");
        assertEquals(200, laptop.form("/winding/landed", later).statusCode());
        assertSays(
                "<dd>undecided: touched at 0:31.0</dd>",
                laptop.get("/evening/flight/" + attempt).body());
        later.put("counts", "yes");
        assertEquals(200, laptop.form("/winding/landed", later).statusCode());
        assertSays("<dd>counts</dd>", laptop.get("/evening/flight/" + attempt).body());
        later.put("seen", "");
        later.put("spoilt", "touched a beam");
        assertEquals(200, laptop.form("/winding/landed", later).statusCode());
        String out = laptop.get("/evening/flight/" + attempt).body();
        assertSays("<dd>left out: touched a beam</dd>", out);
        assertSays("<dd>after 0:31", out);
    }

    @Test
    void the_captain_sees_who_is_ready_and_the_order_of_the_hand_signals() throws Exception {
        String attempt = holding();
        assertSays("<p class=\"times\">none yet</p>", now());
        assertSays("0 of 2 ready; 2 are taken", now());
        assertSays("floor clear, permission, timekeepers ready", now());
        mark(two, attempt, 2, "ready", null);
        assertSays("1 of 2 ready; 2 are taken", now());
        mark(one, attempt, 1, "ready", null);
        assertSays("2 of 2 ready", now());
    }

    @Test
    void a_release_inside_the_window_says_so_on_the_sheet_and_needs_no_word_of_anybody() throws Exception {
        String attempt = flown(61_000);
        assertTrue(
                now().matches("(?s).*href=\"/attempt/" + attempt
                        + "\">Curlew, attempt 1: 1:0[01]\\.[0-9]+, provisional\\.<.*"),
                "the page goes on, and says what the last one came to: " + now());
        String sheet = laptop.get("/results").body();
        assertTrue(
                sheet.matches(
                        "(?s).*Released ([0-9.]+ s|[0-9]+:[0-9]{2}) (after it opened|before it closed): inside the window.*"),
                sheet);
    }

    @Test
    void a_release_is_inside_or_outside_when_the_clocks_can_tell_and_before_a_person_when_not() throws Exception {
        long closes = openWindow();
        String attempt = holding();
        clock.stepBy(Duration.ofMillis(closes + 3_000 - clock.millis()));
        saved(
                one,
                "watch.release",
                watch(attempt, 1).put("serverMs", closes - 100).put("boundMs", 101));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 3_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 3_050));
        assertSays(
                "Released 0.10 s before it closed, but the two clocks may differ by 0.101 s: a person decides", now());
        assertSays(422, "a person decides", close(attempt, ""));
        assertSays(200, "Dunlin", close(attempt, "The starter saw the hand go in time"));
        assertSays(
                "in doubt: The starter saw the hand go in time",
                laptop.get("/results").body());
    }

    @Test
    void the_bound_decides_to_the_millisecond() throws Exception {
        long closes = openWindow();
        String attempt = holding();
        clock.stepBy(Duration.ofMillis(closes + 3_000 - clock.millis()));
        saved(
                one,
                "watch.release",
                watch(attempt, 1).put("serverMs", closes - 100).put("boundMs", 100));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 3_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 3_050));
        HttpResponse<String> closed = close(attempt, "");
        assertEquals(200, closed.statusCode(), closed.body());
        assertSays(
                "Released 0.10 s before it closed: inside the window",
                laptop.get("/results").body());
    }

    @Test
    void a_release_whose_moment_the_device_did_not_know_is_put_before_a_person() throws Exception {
        String attempt = holding();
        ObjectNode release = watch(attempt, 1);
        release.remove("serverMs");
        release.remove("boundMs");
        saved(one, "watch.release", release);
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 2_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 2_050));
        // the second watch's release tap never came: its landing and its time say when it was
        assertSays(200, "Curlew, attempt 2", close(attempt, "two hands"));
        assertSays(
                "released, by when it came in",
                laptop.get("/attempt/" + attempt).body());
    }

    @Test
    void contacts_are_kept_without_stopping_and_stand_beside_the_times() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        mark(one, attempt, 1, "touched", 12_300);
        mark(one, attempt, 1, "held", 31_000);
        mark(one, attempt, 1, "free", 34_200);
        String wrong = mark(one, attempt, 1, "touched", 40_000);
        saved(
                one,
                "watch.mark",
                watch(attempt, 1).put("what", "taken-back").put("ms", 41_000).put("about", wrong));
        assertSays("state now\">in the air<", now());
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 61_200));
        assertSays("1: 1:01.20 (touched at 0:12.3, caught at 0:31.0 for 3.2 s)", now());
    }

    @Test
    void a_model_that_the_building_holds_is_over_after_ten_seconds_less_ten() throws Exception {
        String attempt = holding();
        for (int slot = 1; slot <= 2; slot++) {
            Visitor who = slot == 1 ? one : two;
            saved(who, "watch.release", watch(attempt, slot));
            mark(who, attempt, slot, "held", 50_000);
        }
        clock.stepBy(Duration.ofSeconds(61));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 60_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 59_999));
        assertSays("before 10.00 s were watched: say whether it came down then", now());
        assertSays(422, "say why", close(attempt, ""));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 60_001));
        String page = now();
        assertFalse(page.contains("say whether it came down then"), page);
        assertSays("the flight was over at 1:00.00, less 10.00 s", page);
        close(attempt, "The second watch stopped twice");
        assertSays(">0:50.0<", laptop.get("/results").body());
    }

    @Test
    void a_press_for_a_release_that_was_none_is_taken_back_unless_the_other_watch_saw_it_too() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        assertSays("state now\">in the air<", now());
        mark(one, attempt, 1, "not-released", 1_500);
        assertSays("Curlew, attempt 1 <span class=\"state now\">holding", now());
        assertTrue(laptop.get("/bench").body().contains("wound"), "the motor is on the bench's list as wound again");
        saved(two, "watch.release", watch(attempt, 2));
        saved(one, "watch.release", watch(attempt, 1));
        mark(one, attempt, 1, "not-released", 1_500);
        assertSays("state now\">in the air<", now());
    }

    @Test
    void the_captain_takes_a_release_back_and_the_timekeeper_is_told() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        assertSays(
                200, "Released", laptop.form("/attempt/take-back", Map.of("attempt", attempt, "seen", "released 0 1")));
        assertSays(
                "says that it was not released after all",
                one.get("/timing/part").body());
        assertSays(
                422,
                "This attempt is holding. What can be done now: Released, More turns, Abandon attempt.",
                laptop.form("/attempt/take-back", Map.of("attempt", attempt)));
    }

    @Test
    void a_stop_by_mistake_goes_on_as_if_it_had_not_been_and_both_taps_are_kept() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        clock.stepBy(Duration.ofMillis(31_000));
        String stop = saved(one, "watch.landing", watch(attempt, 1).put("ms", 31_000));
        assertSays("state now\">landed<", now());
        saved(
                one,
                "watch.mark",
                watch(attempt, 1).put("what", "still-flying").put("ms", 32_000).put("about", stop));
        assertSays("state now\">in the air<", now());
        assertFalse(now().contains("0:31.0"), "the mistake is no reading");
        clock.stepBy(Duration.ofMillis(30_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 61_000));
        assertSays("Watch 1 says that its landing was a mistake and the model still flies", now());
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 61_100).put("corrects", stop));
        assertFalse(now().contains("says that its landing was a mistake"));
        assertEquals(200, close(attempt, "").statusCode());
        String record = laptop.get("/attempt/" + attempt).body();
        assertSays("0:31.00 – corrected or taken back", record);
        assertSays("1:01.10", record);
        assertSays("stopped by mistake, still flying at 0:32.00", record);
    }

    @Test
    void a_time_that_is_longer_than_has_passed_is_asked_about() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        clock.stepBy(Duration.ofMillis(61_000));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 61_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 600_000));
        assertSays("Watch 2 says 10:00.00, but when that came in, 1:0", now());
        assertEquals(422, close(attempt, "").statusCode());
        assertSays("Watch 2 says", laptop.get("/desk").body());
        Map<String, String> judge =
                Map.of("attempt", attempt, "slot", "2", "verdict", "left-out", "judged", "It was started early");
        assertEquals(200, laptop.form("/watch/judge", judge).statusCode());
        assertFalse(now().contains("had passed since the release"), now());
    }

    @Test
    void what_is_within_the_clocks_bound_and_a_hand_is_no_doubt() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        clock.stepBy(Duration.ofMillis(61_000));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 61_900));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 62_005)); // one second and a bound of 5 ms
        assertFalse(now().contains("had passed since the release"), now());
        assertEquals(200, close(attempt, "").statusCode());
    }

    @Test
    void a_double_press_lands_nothing_and_is_asked_about_once_another_watch_has_seen_the_landing() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        saved(two, "watch.release", watch(attempt, 2));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 400));
        assertSays("state now\">in the air<", now());
        clock.stepBy(Duration.ofMillis(61_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 61_000));
        assertSays("Watch 1 was stopped 0:00.40 after the release: was it pressed twice?", now());
    }

    @Test
    void a_watch_whose_clocks_came_apart_is_asked_about_until_the_captain_has_looked() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        clock.stepBy(Duration.ofMillis(61_000));
        saved(
                one,
                "watch.landing",
                watch(attempt, 1).put("ms", 61_000).put("gapMs", -3_600_000).put("reloaded", true));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 61_050));
        assertSays("came apart by 3600.0 s while it ran", now());
        assertSays("was loaded anew while it ran", now());
        assertEquals(422, close(attempt, "").statusCode());
        Map<String, String> judge =
                Map.of("attempt", attempt, "slot", "1", "verdict", "counts", "judged", "It agrees with the other one");
        laptop.form("/watch/judge", judge);
        assertFalse(now().contains("came apart"));
        assertEquals(200, close(attempt, "").statusCode());
    }

    @Test
    void after_a_collision_nothing_is_taken_before_the_entry_has_chosen_and_flying_again_uses_up_nothing()
            throws Exception {
        String attempt = holding();
        fly(attempt, 61_000);
        Map<String, String> say = new HashMap<>(Map.of("attempt", attempt, "to", "keep"));
        assertSays(422, "Tell the entry first", laptop.form("/attempt/collision", say));
        say.put("to", "told");
        assertSays(200, "Keep the time or fly again", laptop.form("/attempt/collision", say));
        assertSays(422, "Wait for the choice", close(attempt, ""));
        clock.stepBy(Duration.ofSeconds(59));
        say.put("to", "again");
        assertEquals(200, laptop.form("/attempt/collision", say).statusCode());
        assertSays("void: collision: flown again", laptop.get("/results").body());
        for (String next : List.of("attempt 1, 2nd try", "attempt 2 ", "attempt 3 ")) {
            assertSays("Curlew, " + next, now());
            openWindow();
            flown(61_000);
        }
        assertFalse(now().contains("Curlew, attempt 4"), "three flights, and the one flown again");
    }

    @Test
    void a_choice_that_comes_too_late_is_the_rules_own() throws Exception {
        String attempt = holding();
        fly(attempt, 61_000);
        laptop.form("/attempt/collision", Map.of("attempt", attempt, "to", "told"));
        clock.stepBy(Duration.ofMillis(60_001));
        assertSays(
                200,
                "too late: the entry keeps its time",
                laptop.form("/attempt/collision", Map.of("attempt", attempt, "to", "again")));
        assertEquals(200, close(attempt, "").statusCode());
    }

    @Test
    void a_short_flight_is_repeated_once_and_then_brings_no_time() throws Exception {
        forms.save("events", forms.row("events", EVENT), Map.of("minimum", "60"));
        rules(Map.of("repeats", "1"));
        flown(59_000);
        assertSays(
                ">0:59.0</a> <small>short, may be repeated</small>",
                laptop.get("/results").body());
        assertSays(
                "below 1:00: not official, may be repeated",
                laptop.get("/results").body());
        openWindow();
        flown(59_900);
        assertSays(
                "no repeat left: official flight 1 of 3, without a time",
                laptop.get("/results").body());
        openWindow();
        flown(60_000);
        String sheet = laptop.get("/results").body();
        assertSays("<small>short, used up, 2nd try</small>", sheet);
        assertTrue(sheet.matches("(?s).*<b class=\"provisional\">1:00.0</b>.*"), sheet);
        assertSays("Flights: at least 1:00, 1 repeat", now());
    }

    @Test
    void best_and_worst_are_dropped_and_a_score_waits_for_enough_flights() throws Exception {
        rules(Map.of("drop-best", "1", "drop-worst", "1"));
        flown(61_000);
        assertSays("Mean without the best and the worst", laptop.get("/results").body());
        assertSays("<b>–</b>", laptop.get("/results").body());
        openWindow();
        flown(63_000);
        openWindow();
        flown(62_000);
        assertSays(
                "<b class=\"provisional\">1:02.00</b>",
                laptop.get("/results/wall").body());
    }

    @Test
    void each_watch_signs_on_its_device_the_captain_with_the_pin_and_what_is_signed_changes_only_when_opened_again()
            throws Exception {
        String pin = Demo.PIN;
        String attempt = flown(61_000);
        String path = "/attempt/" + attempt;
        assertSays(
                "<a class=\"quiet\" href=\"/attempt/" + attempt + "\">to sign: watch 1, watch 2, captain",
                laptop.get("/results").body());
        assertSays("Sign for watch 1", one.get("/timing/part").body());
        Map<String, String> old = Map.of("attempt", attempt, "slot", "1", "seen", "61050");
        assertSays(409, "changed meanwhile", one.form("/watch/sign", old));
        String seen = found(one.get("/timing/part").body(), "name=\"seen\" value=\"(\\d+)\"");
        assertEquals(
                200,
                one.form("/watch/sign", Map.of("attempt", attempt, "slot", "1", "seen", seen))
                        .statusCode());
        assertFalse(one.get("/timing/part").body().contains("Sign for watch 1"));
        assertSays("Signed.", one.get("/timing/part").body());
        assertFalse(two.get("/timing/part").body().contains("Signed."), "its own watch has not");
        assertSays(
                422,
                "Its own device signs for a watch",
                one.form(path + "/sign", Map.of("as", "watch-2", "seen", seen)));
        Map<String, String> captain = new HashMap<>(Map.of("as", "captain", "seen", seen));
        assertSays(422, "The captain signs with the coach", laptop.form(path + "/sign", captain));
        captain.put("pin", "000000".equals(pin) ? "000001" : "000000");
        assertSays(422, "not the coach", laptop.form(path + "/sign", captain));
        captain.put("pin", pin);
        assertSays(200, "signed at", laptop.form(path + "/sign", captain));
        assertSays(
                "signed by watch 1, captain; to sign: watch 2",
                laptop.get("/results").body());
        two.form("/watch/sign", Map.of("attempt", attempt, "slot", "2", "seen", seen));
        assertSays("signed by all", laptop.get("/results").body());

        Map<String, String> again = new HashMap<>(Map.of("reason", ""));
        assertSays(422, "Say why", laptop.form(path + "/reopen", again));
        again.put("reason", "The wrong watch was read");
        assertSays(422, "PIN", laptop.form(path + "/reopen", again));
        assertSays("signed by all", laptop.get("/results").body());
        again.put("pin", pin);
        assertSays(200, "opened again: The wrong watch was read", laptop.form(path + "/reopen", again));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 61_250));
        laptop.form(
                "/watch/judge",
                Map.of("attempt", attempt, "slot", "1", "verdict", "failed", "judged", "It was another model's"));
        close(attempt, "One watch is enough here");
        String record = laptop.get(path).body();
        assertSays("1:01.0: Watches 1:01.00, 1:01.05", record);
        assertSays("1:01.2: Watch 1:01.25", record);
        assertSays("to sign: watch 2, captain", laptop.get("/results").body());
        assertFalse(Files.readString(root.resolve("day/journal.jsonl")).contains(pin), "the PIN goes nowhere");
    }

    @Test
    void a_protest_is_a_mark_with_its_deadline_and_is_settled_in_words() throws Exception {
        String attempt = flown(61_000);
        String path = "/attempt/" + attempt;
        assertSays("Time to protest: <b data-until=", laptop.get(path).body());
        assertSays(422, "Say what is protested", one.form(path + "/protest", Map.of("words", " ")));
        assertSays(200, "Touched the beam", one.form(path + "/protest", Map.of("words", "Touched the beam, 5.2")));
        assertSays("protested", laptop.get("/results").body());
        clock.stepBy(Duration.ofMinutes(31));
        assertSays(200, "(after the time to protest)", one.form(path + "/protest", Map.of("words", "Late one")));
        String id = found(laptop.get(path).body(), "name=\"protest\" value=\"([^\"]+)\"");
        assertEquals(
                403,
                one.form(path + "/settle", Map.of("protest", id, "how", "no")).statusCode());
        assertSays(
                200,
                "The jury: it stands",
                laptop.form(path + "/settle", Map.of("protest", id, "how", "The jury: it stands")));
        assertSays(
                422, "This protest is settled", laptop.form(path + "/settle", Map.of("protest", id, "how", "again")));
    }

    @Test
    void the_last_call_stands_on_now_timing_and_the_wall() throws Exception {
        long closes = openWindow();
        holding();
        String before = now();
        assertSays("the window closes in", before);
        assertFalse(before.contains("Last call"));
        clock.stepBy(Duration.ofMillis(closes - 120_000 - clock.millis()));
        for (String page : new String[] {
            now(), one.get("/timing/part").body(), laptop.get("/results/wall").body()
        }) {
            assertSays("Last call: the window closes in", page);
            assertSays("data-until=\"" + closes + "\"", page);
        }
    }

    @Test
    void in_one_window_entries_are_called_in_turn_by_the_call_order() throws Exception {
        forms.save("windows", forms.row("windows", "Plover"), Map.of("entry", ""));
        LocalDateTime opens = LocalDateTime.now(clock).truncatedTo(ChronoUnit.MINUTES);
        for (String entry : new String[] {"Avocet", "Dunlin"}) {
            forms.save(
                    "windows",
                    forms.row("windows", entry),
                    Map.of("opens", MINUTE.format(opens), "closes", MINUTE.format(opens.plusMinutes(5))));
        }
        forms.save("entries", forms.row("entries", "Dunlin"), Map.of("call-order", "1"));
        forms.save("entries", forms.row("entries", "Avocet"), Map.of("call-order", "2"));
        assertSays("Dunlin, attempt 1", now());
        flown(61_000);
        assertSays("Avocet, attempt 1", now());
    }

    @Test
    void who_times_in_the_air_keeps_the_watch_when_another_entry_is_called() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        String other = found(
                laptop.get("/").body(), "name=\"entry\" value=\"([^\"]*)\"><input type=\"hidden\" name=\"number\"");
        laptop.form("/attempt/call", Map.of("entry", other));
        assertSays("data-attempt=\"" + attempt + "\"", one.get("/timing/part").body());
        assertSays("Curlew, attempt 1 <span", now()); // what flies stays in front; the other stands beside it
        assertSays("href=\"/?attempt=", now());
        clock.stepBy(Duration.ofMillis(61_000));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 61_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 61_010));
        assertEquals(200, close(attempt, "").statusCode());
    }

    @Test
    void what_a_signed_result_rests_on_stays_whatever_is_pressed_afterwards() throws Exception {
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        saved(two, "watch.release", watch(attempt, 2));
        clock.stepBy(Duration.ofMillis(61_000));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 61_000));
        String tap = saved(two, "watch.landing", watch(attempt, 2).put("ms", 61_050));
        close(attempt, "");
        saved(
                two,
                "watch.mark",
                watch(attempt, 2).put("what", "still-flying").put("ms", 62_000).put("about", tap));
        assertSays("to sign: watch 1, watch 2, captain", laptop.get("/results").body());
        clock.stepBy(Duration.ofSeconds(5));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 99_000));
        String record = laptop.get("/attempt/" + attempt).body();
        assertSays("1:39.00 – came in after the closing", record);
        assertFalse(record.contains("1:01.05 – corrected or taken back"), record);
    }

    @Test
    void a_form_that_is_older_than_a_mark_or_a_judgement_takes_no_time() throws Exception {
        String attempt = holding();
        fly(attempt, 61_000);
        String seen = hidden(now(), "seen");
        mark(one, attempt, 1, "held", 20_000);
        var answer = laptop.form("/attempt/close", Map.of("attempt", attempt, "seen", seen));
        assertSays(409, "A timekeeper has marked something", answer);
    }

    @Test
    void a_watch_strikes_no_reading_of_another() throws Exception {
        String attempt = holding();
        saved(two, "watch.release", watch(attempt, 2));
        String others = saved(two, "watch.landing", watch(attempt, 2).put("ms", 61_050));
        saved(
                one,
                "watch.mark",
                watch(attempt, 1).put("what", "still-flying").put("ms", 1).put("about", others));
        assertSays("2: 1:01.05", now());
    }

    @Test
    void a_false_release_is_forgotten_with_all_that_came_with_it() throws Exception {
        long closes = openWindow();
        String attempt = holding();
        saved(one, "watch.release", watch(attempt, 1));
        saved(one, "watch.landing", watch(attempt, 1).put("ms", 5_000));
        laptop.form("/attempt/take-back", Map.of("attempt", attempt));
        laptop.form("/attempt/take-back", Map.of("attempt", attempt));
        assertSays("state now\">holding<", now());
        clock.stepBy(Duration.ofMillis(closes + 3_000 - clock.millis()));
        saved(two, "watch.release", watch(attempt, 2));
        clock.stepBy(Duration.ofMillis(61_000));
        saved(two, "watch.landing", watch(attempt, 2).put("ms", 61_000));
        assertSays("3.00 s after it closed: outside the window", now().replaceAll("3\\.\\d+ s after", "3.00 s after"));
        assertFalse(now().contains("1: 0:05"), "the reading of the false flight");
    }

    @Test
    void while_it_is_quiet_the_record_tells_no_flight_time_from_two_moments() throws Exception {
        forms.save("terms", forms.row("terms", EVENT), Map.of("outside-help", "none"));
        String attempt = holding();
        fly(attempt, 61_000);
        String record = laptop.get("/attempt/" + attempt).body();
        assertSays("<dt>released</dt>", record);
        assertFalse(record.contains("<dt>landed</dt>"), record);
    }

    @Test
    void a_void_flight_is_opened_again_when_the_jury_says_so() throws Exception {
        String attempt = holding();
        fly(attempt, 61_000);
        laptop.form("/attempt/collision", Map.of("attempt", attempt, "to", "told"));
        assertSays(200, "Collided", laptop.form("/attempt/collision", Map.of("attempt", attempt, "to", "none")));
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "Thrown", "again", "yes"));
        assertSays("void: Thrown", laptop.get("/results").body());
        assertSays(
                200,
                "opened again: The jury",
                laptop.form("/attempt/" + attempt + "/reopen", Map.of("reason", "The jury")));
        assertEquals(200, close(attempt, "").statusCode());
        assertSays(">1:01.0<", laptop.get("/results").body());
    }

    @Test
    void more_than_there_are_attempts_cannot_be_dropped() throws Exception {
        var refused = forms.save("rules", forms.row("rules", EVENT), Map.of("drop-best", "1", "drop-worst", "2"));
        assertSays(422, "Of 3 attempts 3 would be dropped", refused);
    }
}
