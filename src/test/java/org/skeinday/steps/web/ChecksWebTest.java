package org.skeinday.steps.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.browser.SteppedClock;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** The lists of the demo's day, tapped as pages do it. */
class ChecksWebTest {
    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private Visitor helper;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        laptop = new Visitor(app.port(), "", 71);
        helper = Demo.joined(app, "helper", "", 72);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String called() throws Exception {
        CalledForTests.callOnly(laptop);
        return CalledForTests.value(laptop.get("/now").body(), "name=\"attempt\" value=\"([^\"]+)\"");
    }

    private String event() throws Exception {
        return CalledForTests.value(helper.get("/checks").body(), "/checks\\?list=packing&amp;subject=([^\"]+)\"");
    }

    private static ObjectNode about(String list, String subject) {
        return Json.MAPPER
                .createObjectNode()
                .put("list", list)
                .put("subject", subject)
                .put("revision", 1);
    }

    private static ObjectNode item(String list, String subject, String step) {
        return about(list, subject).put("step", step);
    }

    private static void saved(JsonNode answer) {
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    private static void refused(String words, JsonNode answer) {
        assertEquals("refused", answer.path("state").asText(), answer.toString());
        assertTrue(answer.path("reason").asText().contains(words), answer.toString());
    }

    /** All that winding waits for at the place. */
    private void placeDone(Visitor who, String event) throws Exception {
        saved(who.tap("step.tick", item("winding-place", event, "mount-pulled").put("answer", "15")));
        saved(who.tap("step.tick", item("winding-place", event, "distances").put("answer", "by eye")));
        saved(who.tap("step.tick", item("winding-place", event, "adult-here")));
    }

    /** All before eyes and line. */
    private static void checked(Visitor who, String attempt) throws Exception {
        for (String step : List.of("adult", "motor", "mount", "rings", "model-away")) {
            saved(who.tap("step.tick", item("before-winding", attempt, step)));
        }
        saved(who.tap("step.tick", item("before-winding", attempt, "direction").put("answer", "cw")));
        saved(who.tap("step.tick", item("before-winding", attempt, "ratio").put("answer", "10")));
    }

    private static void eyesAndLine(Visitor who, String attempt) throws Exception {
        saved(who.tap("step.tick", item("before-winding", attempt, "eye-protection")));
        saved(who.tap("step.tick", item("before-winding", attempt, "line")));
    }

    private HttpResponse<String> wind(String attempt) throws Exception {
        return laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding", "seen", ""));
    }

    private static void says(int status, String words, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), words + " in " + answer.body());
    }

    @Test
    void winding_waits_for_the_place_and_all_before_winding_both_ways_in_and_for_nothing_else() throws Exception {
        String event = event();
        String attempt = calledWithMotor();
        says(422, "Winding waits for \u201cMount pulled; say how hard\u201d and 11 more.", wind(attempt));
        refused(
                "Winding waits for",
                helper.tap("wind.begin", Json.MAPPER.createObjectNode().put("attempt", attempt)));
        assertFalse(helper.get("/winding").body().contains("First crank turn"), "no key while winding waits");
        placeDone(helper, event);
        says(422, "Winding waits for \u201cSupervising adult is here\u201d and 8 more.", wind(attempt));
        checked(helper, attempt);
        says(422, "Eye protection on", wind(attempt));
        saved(helper.tap("step.tick", item("before-winding", attempt, "eye-protection")));
        says(422, "Nobody but the winder in line", wind(attempt));
        saved(helper.tap("step.tick", item("before-winding", attempt, "line")));
        assertTrue(helper.get("/winding").body().contains("Winding"), "the page");
        says(200, ">Wound</button>", wind(attempt));
        assertTrue(
                helper.get("/checks").body().contains("Nothing is asked between"), "quiet from the first crank turn");
    }

    /** People have been at the lane, counter and needle have moved, another motor has another arrow. */
    @Test
    void another_wind_of_the_attempt_asks_its_checks_again() throws Exception {
        String attempt = calledWithMotor();
        placeDone(helper, event());
        checked(helper, attempt);
        eyesAndLine(helper, attempt);
        says(200, ">Wound</button>", wind(attempt));
        Matcher motor = Pattern.compile("name=\"motor\" value=\"([^\"]+)\"")
                .matcher(laptop.get("/now").body());
        assertTrue(motor.find());
        Map<String, String> on = Map.of("attempt", attempt, "motor", motor.group(1), "turns", "80");
        assertEquals(200, laptop.form("/attempt/run-back", on).statusCode());
        says(422, "Winding waits for \u201cSupervising adult is here\u201d and 8 more.", wind(attempt));
        checked(helper, attempt);
        says(422, "Eye protection on", wind(attempt));
        saved(helper.tap("step.tick", item("before-winding", attempt, "eye-protection")));
        says(422, "Nobody but the winder in line", wind(attempt));
        saved(helper.tap("step.tick", item("before-winding", attempt, "line")));
        says(200, ">Wound</button>", wind(attempt));
    }

    @Test
    void the_line_is_ticked_last_and_asked_again_when_something_is_seen_to_after_it() throws Exception {
        String attempt = calledWithMotor();
        placeDone(helper, event());
        refused(
                "The line comes last, just before winding. Before it: \u201cSupervising adult is here\u201d and 7 more",
                helper.tap("step.tick", item("before-winding", attempt, "line")));
        checked(helper, attempt);
        refused("Before it: \u201cEye protection on", helper.tap("step.tick", item("before-winding", attempt, "line")));
        eyesAndLine(helper, attempt);
        String page =
                helper.get("/checks?list=before-winding&subject=" + attempt).body();
        String slip = CalledForTests.value(page, "(?s)id=\"item-rings\".*?data-about=\"([^\"]+)\"");
        saved(helper.tap("step.undo", Json.MAPPER.createObjectNode().put("about", slip)));
        says(422, "Winding waits for \u201cBoth rings seated and tugged\u201d.", wind(attempt));
        saved(helper.tap("step.tick", item("before-winding", attempt, "rings")));
        says(422, "Winding waits for \u201cNobody but the winder in line", wind(attempt));
        assertTrue(
                helper.get("/checks?list=before-winding&subject=" + attempt)
                        .body()
                        .contains("the line comes last"),
                "it says why");
        saved(helper.tap("step.tick", item("before-winding", attempt, "line")));
        says(200, ">Wound</button>", wind(attempt));
    }

    private void taken(String address, Map<String, String> form) throws Exception {
        HttpResponse<String> answer = laptop.form(address, form);
        assertEquals(200, answer.statusCode(), address + " " + answer.body());
    }

    private String motor(String tag) throws Exception {
        return CalledForTests.value(laptop.get("/bench").body(), "/bench/motor/([^\"]+)\">" + tag + "<");
    }

    /** The second hour: a break and its spare, a wind that is run back, a try that is given up, and the next one. */
    @Test
    void each_of_three_winds_asks_everything_anew_and_the_next_try_begins_with_nothing_ticked() throws Exception {
        String attempt = calledWithMotor();
        String all = "Winding waits for \u201cSupervising adult is here\u201d and 8 more.";
        placeDone(helper, event());
        checked(helper, attempt);
        eyesAndLine(helper, attempt);
        says(200, ">Wound</button>", wind(attempt));
        Map<String, String> broke = Map.of("attempt", attempt, "motor", motor("A3"), "place", "strand");
        taken("/attempt/broke", broke);
        taken("/attempt/people-safe", broke);
        taken("/attempt/parted", broke);
        taken("/attempt/take-motor", Map.of("attempt", attempt, "motor", motor("C1"), "seenMotor", motor("A3")));
        says(422, all, wind(attempt));
        checked(helper, attempt);
        eyesAndLine(helper, attempt);
        says(200, ">Wound</button>", wind(attempt));
        Map<String, String> on = Map.of("attempt", attempt, "motor", motor("C1"), "turns", "30");
        taken("/attempt/run-back", on);
        says(422, all, wind(attempt));
        taken("/checks/gate", Map.of("attempt", attempt, "adult", "Mrs Grebe", "passed", "looked at it myself"));
        eyesAndLine(helper, attempt);
        says(200, ">Wound</button>", wind(attempt));
        taken("/attempt/give-up", Map.of("attempt", attempt, "reason", "the roof leaks"));
        taken("/attempt/run-back", on);
        String next = laptop.get("/now").body();
        Map<String, String> call =
                Map.of("entry", CalledForTests.value(next, "name=\"entry\" value=\"([^\"]+)\""), "motor", motor("C1"));
        String called = laptop.form("/attempt/call", call).body();
        says(422, all, wind(CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"")));
    }

    @Test
    void what_an_adult_answered_for_holds_no_line_and_is_asked_again_for_another_wind() throws Exception {
        String attempt = calledWithMotor();
        Map<String, String> pass = Map.of("attempt", attempt, "adult", "Mrs Grebe", "passed", "looked at it myself");
        assertEquals(200, helper.form("/checks/gate", pass).statusCode());
        eyesAndLine(helper, attempt);
        says(200, ">Wound</button>", wind(attempt));
        String motor = CalledForTests.value(laptop.get("/now").body(), "name=\"motor\" value=\"([^\"]+)\"");
        Map<String, String> on = Map.of("attempt", attempt, "motor", motor, "turns", "80");
        assertEquals(200, laptop.form("/attempt/run-back", on).statusCode());
        refused(
                "Before it: \u201cSupervising adult is here\u201d and 7 more",
                helper.tap("step.tick", item("before-winding", attempt, "line")));
        says(422, "The supervising adult may answer", wind(attempt));
    }

    @Test
    void the_supervising_adult_answers_for_what_is_open_and_it_stays_visible() throws Exception {
        String attempt = calledWithMotor();
        Map<String, String> form = new HashMap<>(Map.of("attempt", attempt, "adult", "", "passed", "late"));
        says(422, "Name the supervising adult", helper.form("/checks/gate", form));
        form.put("adult", "Mrs Grebe");
        form.put("passed", "");
        says(422, "Say why", helper.form("/checks/gate", form));
        form.put("passed", "looked at it myself");
        assertEquals(200, helper.form("/checks/gate", form).statusCode());
        says(422, "no override for eyes and line", wind(attempt));
        says(422, "no override for eyes and line", helper.form("/checks/gate", form));
        assertTrue(helper.get("/checks").body().contains("<h1>Before winding</h1>"), "the place is answered for");
        for (String page : new String[] {"/checks", "/now", "/winding"}) {
            String waits = laptop.get(page).body();
            assertTrue(waits.contains("no override for eyes and line"), waits);
            assertFalse(waits.contains("The supervising adult answers for it"), page);
        }
        for (String page : new String[] {"/now", "/attempt/" + attempt}) {
            String held = laptop.get(page).body();
            assertTrue(held.contains("answered for by</dt><dd>Mrs Grebe: looked at it myself (for "), held);
        }
        says(422, "Nothing is waited for", helperPassAgain(attempt));
        says(200, ">Wound</button>", wind(attempt));
        String card = laptop.get("/now").body();
        assertFalse(card.contains("Mrs Grebe"), "all was ticked since, and it is wound without an answer: " + card);
        String told = laptop.get("/attempt/" + attempt).body();
        assertTrue(told.contains("Mrs Grebe: looked at it myself (for "), "the attempt's own page keeps it: " + told);
        assertTrue(told.contains("asked again or checked since"), told);
    }

    private HttpResponse<String> helperPassAgain(String attempt) throws Exception {
        placeDone(helper, event());
        checked(helper, attempt);
        eyesAndLine(helper, attempt);
        return helper.form("/checks/gate", Map.of("attempt", attempt, "adult", "Mrs Grebe", "passed", "again"));
    }

    @Test
    void what_opens_again_after_a_pass_is_not_answered_for() throws Exception {
        String event = event();
        String attempt = called();
        checked(helper, attempt);
        saved(helper.tap("step.tick", item("winding-place", event, "distances").put("answer", "by eye")));
        assertEquals(
                200,
                helper.form(
                                "/checks/gate",
                                Map.of("attempt", attempt, "adult", "Mrs Grebe", "passed", "pulled by hand"))
                        .statusCode());
        eyesAndLine(helper, attempt);
        assertFalse(laptop.get("/now").body().contains("Winding waits for"), "answered for");
        laptop.form(
                "/hall/measure",
                HallFields.of(
                        "4 m", Map.of("kind0", "spectator", "name0", "bench", "first0", "2 m", "second0", "1 m")));
        says(422, "Models and people outside the tape", wind(attempt));
    }

    @Test
    void a_tick_twice_counts_once_and_a_value_that_is_none_is_refused() throws Exception {
        String event = event();
        String id = helper.newId();
        saved(helper.tapAs(id, "step.tick", item("arrival", event, "venue-asked")));
        saved(helper.tapAs(id, "step.tick", item("arrival", event, "venue-asked")));
        refused("answered with a value", helper.tap("step.tick", item("winding-place", event, "mount-pulled")));
        refused(
                "is no number",
                helper.tap(
                        "step.tick",
                        item("winding-place", event, "mount-pulled").put("answer", "hard")));
        refused("no such item", helper.tap("step.tick", item("arrival", event, "dance")));
        refused("no such list", helper.tap("step.tick", item("nothing", event, "dance")));
    }

    @Test
    void a_critical_item_is_not_left_out_and_another_stays_visible_with_its_reason() throws Exception {
        String event = event();
        refused(
                "cannot be left out",
                helper.tap("step.skip", item("arrival", event, "venue-asked").put("reason", "no")));
        refused(
                "Say why",
                helper.tap("step.skip", item("arrival", event, "unpacked").put("reason", " ")));
        saved(helper.tap("step.skip", item("arrival", event, "unpacked").put("reason", "models come later")));
        String page = helper.get("/checks?list=arrival&subject=" + event).body();
        assertTrue(page.contains("left out: models come later"), page);
    }

    @Test
    void one_tap_answers_a_list_that_was_read_aloud_and_no_other() throws Exception {
        String attempt = called();
        refused("not a list to read aloud", helper.tap("step.read-aloud", about("before-winding", attempt)));
        saved(helper.tap("step.read-aloud", about("before-loading", attempt)));
        String page =
                helper.get("/checks?list=before-loading&subject=" + attempt).body();
        assertTrue(page.contains("Start winding; nothing is asked until release."), page);
    }

    @Test
    void a_tap_is_taken_back_at_once_and_corrected_with_a_reason_later() throws Exception {
        String event = event();
        String id = helper.newId();
        saved(helper.tapAs(id, "step.tick", item("arrival", event, "venue-asked")));
        saved(helper.tap("step.undo", Json.MAPPER.createObjectNode().put("about", id + "-0")));
        String page = helper.get("/checks?list=arrival&subject=" + event).body();
        assertTrue(page.contains("Done: Venue"), "open again: " + page);
        String other = helper.newId();
        saved(helper.tapAs(
                other, "step.tick", item("winding-place", event, "mount-pulled").put("answer", "15")));
        Map<String, String> right = new HashMap<>(Map.of(
                "about",
                other + "-0",
                "step",
                "mount-pulled",
                "done",
                "yes",
                "answer",
                "51",
                "reason",
                "",
                "list",
                "winding-place",
                "subject",
                event));
        says(422, "Say why", helper.form("/checks/correct", right));
        right.put("reason", "digits swapped");
        says(200, "51 ·", helper.form("/checks/correct", right));
    }

    @Test
    void the_direction_that_is_said_is_compared_with_the_motor() throws Exception {
        String attempt = calledWithMotor();
        refused(
                "look at both arrows again",
                helper.tap(
                        "step.tick",
                        item("before-winding", attempt, "direction").put("answer", "acw")));
        saved(helper.tap(
                "step.tick", item("before-winding", attempt, "direction").put("answer", "cw")));
    }

    @Test
    void turns_remaining_said_in_the_list_are_those_of_the_flight() throws Exception {
        String attempt = calledWithMotor();
        CalledForTests.letWind(laptop, attempt);
        wind(attempt);
        for (String to : new String[] {"holding", "released", "landed"}) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to, "seen", ""));
        }
        assertTrue(helper.get("/checks").body().contains("After landing"), "the list of this pause first");
        saved(helper.tap(
                "step.tick", item("after-landing", attempt, "remaining").put("answer", "44")));
        assertTrue(laptop.get("/winding?flight=" + attempt).body().contains("value=\"44\""), "on its own page too");
    }

    private String calledWithMotor() throws Exception {
        String now = laptop.get("/now").body();
        String entry = CalledForTests.value(now, "name=\"entry\" value=\"([^\"]+)\"");
        String motor = CalledForTests.value(laptop.get("/bench").body(), "/bench/motor/([^\"]+)\">A3<");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        return CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
    }

    @Test
    void the_list_of_this_pause_comes_first() throws Exception {
        String event = event();
        assertTrue(helper.get("/checks").body().contains("<h1>Arrival and unpacking</h1>"));
        for (String step : new String[] {"venue-asked", "unpacked", "hall-measured", "motors-warm"}) {
            saved(helper.tap("step.tick", item("arrival", event, step)));
        }
        String next = helper.get("/checks").body();
        assertTrue(next.contains("<h1>Winding place</h1>"), next);
        assertTrue(next.contains("Arrival and unpacking is done. Next: set up the winding place."), next);
        placeDone(helper, event);
        saved(helper.tap(
                "step.tick", item("winding-place", event, "lane-length").put("answer", "4 m")));
        assertTrue(helper.get("/checks").body().contains("<h1>Model inspection</h1>"));
        called();
        assertTrue(helper.get("/checks").body().contains("<h1>Before winding</h1>"));
    }

    @Test
    void a_place_that_is_safe_keeps_its_list_in_sight_and_winding_may_start_when_all_is_ticked() throws Exception {
        String event = event();
        String attempt = calledWithMotor();
        placeDone(helper, event);
        String left = helper.get("/checks").body();
        assertTrue(left.contains("<h1>Winding place</h1>"), left);
        assertTrue(left.contains("1 item is left in Winding place: Table by the door."), left);
        clock.stepBy(Duration.ofMinutes(3));
        String later = helper.get("/checks").body();
        assertTrue(later.contains("<h1>Before winding</h1>"), later);
        assertTrue(
                later.contains("1 item is left in Winding place: Table by the door."),
                "said, though another list is shown");
        assertFalse(later.contains("Winding may start"), later);
        checked(helper, attempt);
        assertFalse(helper.get("/checks").body().contains("Winding may start"), "the list is not done");
        eyesAndLine(helper, attempt);
        String done = helper.get("/checks").body();
        assertTrue(done.contains("Winding may start. <a class=\"link\" href=\"/\">To Now</a>"), done);
        assertTrue(done.contains("Before winding is done."), done);
        assertFalse(done.contains("Next: read before loading aloud"), "nothing is wound yet");
    }

    @Test
    void a_list_is_worded_anew_and_runs_that_began_go_on_in_theirs() throws Exception {
        String event = event();
        saved(helper.tap("step.tick", item("arrival", event, "venue-asked")));
        Map<String, String> form = list("Arrival, our way");
        form.put("text1", "");
        assertEquals(204, laptop.form("/checks/lists/arrival", form).statusCode());
        assertTrue(laptop.get("/checks/print").body().contains("Arrival, our way"), "in force on paper");
        String run = helper.get("/checks?list=arrival&subject=" + event).body();
        assertTrue(run.contains("<h1>Arrival and unpacking</h1>"), run);
        says(409, "at revision 2 by now", laptop.form("/checks/lists/arrival", form));
        Map<String, String> wrong = list("Arrival, our way");
        wrong.put("seen", "2");
        wrong.put("critical0", "no");
        wrong.put("critical2", "yes");
        says(422, "must come first", laptop.form("/checks/lists/arrival", wrong));
        assertEquals(403, helper.form("/checks/lists/arrival", form).statusCode());
    }

    private static Map<String, String> list(String title) {
        Map<String, String> form =
                new HashMap<>(Map.of("seen", "1", "title", title, "way", "do-then-confirm", "next", "Next: the lane."));
        String[] items = {"Venue asked", "Models out", "Hall looked over"};
        for (int i = 0; i < items.length; i++) {
            form.put("id" + i, "item" + i);
            form.put("text" + i, items[i]);
            form.put("reason" + i, "It is asked for.");
            form.put("answer" + i, "ok");
            form.put("critical" + i, i == 0 ? "yes" : "no");
        }
        return form;
    }

    @Test
    void a_caution_is_told_in_full_until_it_was_met_and_only_to_this_person() throws Exception {
        event();
        String first = helper.get("/checks").body();
        String caution = CalledForTests.value(first, "data-met=\"([^\"]+)\"");
        String day = java.time.LocalDate.now(Clock.systemDefaultZone()).toString();
        ObjectNode met = Json.MAPPER.createObjectNode().put("caution", caution).put("day", day);
        saved(helper.tap("caution.met", met));
        saved(helper.tap("caution.met", met));
        assertTrue(helper.get("/checks").body().contains("data-met=\"" + caution), "it stays while it is read");
        clock.stepBy(Duration.ofMinutes(3));
        assertFalse(helper.get("/checks").body().contains("data-met=\"" + caution), "then it is one line");
        assertTrue(laptop.get("/checks").body().contains("data-met=\"" + caution), "in full for another reader");
        refused("no such caution", helper.tap("caution.met", met.deepCopy().put("caution", "x")));
    }

    @Test
    void after_an_interruption_the_last_item_and_the_time_away_are_told_and_critical_items_asked_again()
            throws Exception {
        String event = event();
        saved(helper.tap("step.tick", item("arrival", event, "venue-asked")));
        saved(helper.tap("step.tick", item("arrival", event, "unpacked")));
        assertFalse(helper.get("/checks").body().contains("Away for"), "nobody has gone away");
        clock.stepBy(Duration.ofMinutes(6));
        String page = helper.get("/checks").body();
        assertTrue(page.contains("Models out by the frame"), page);
        assertTrue(page.contains("Away for 6 min. Critical items are asked again."), page);
        saved(helper.tap("step.tick", item("arrival", event, "hall-measured")));
        String after = helper.get("/checks").body();
        assertTrue(after.contains("interrupted for 6 min"), after);
        assertTrue(after.contains("Done: Venue"), "the critical one is open again: " + after);
        assertFalse(after.contains("Done: Models out"), "the other one stays done");
    }

    @Test
    void another_person_who_goes_on_is_asked_the_critical_items_again_but_two_at_once_are_not() throws Exception {
        String event = event();
        Visitor second = Demo.joined(app, "helper", "", 74);
        saved(helper.tap("step.tick", item("arrival", event, "venue-asked")));
        saved(second.tap("step.tick", item("arrival", event, "unpacked")));
        assertFalse(second.get("/checks").body().contains("Done: Venue"), "two at once");
        clock.stepBy(Duration.ofSeconds(30));
        assertFalse(helper.get("/checks").body().contains("Critical items are asked again"), "still together");
        clock.stepBy(Duration.ofSeconds(30));
        assertFalse(helper.get("/checks").body().contains("Critical items are asked again"), "helper has ticked here");
        Visitor third = Demo.joined(app, "helper", "", 69);
        saved(third.tap("step.tick", item("arrival", event, "hall-measured")));
        String page = helper.get("/checks").body();
        assertTrue(page.contains("another person goes on after 1 min"), page);
    }

    @Test
    void a_tap_is_not_taken_back_after_ten_seconds() throws Exception {
        String event = event();
        String id = helper.newId();
        saved(helper.tapAs(id, "step.tick", item("arrival", event, "venue-asked")));
        clock.stepBy(Duration.ofSeconds(11));
        refused(
                "for 10 s only",
                helper.tap("step.undo", Json.MAPPER.createObjectNode().put("about", id + "-0")));
    }

    @Test
    void a_first_crank_turn_that_comes_in_late_has_happened_and_is_kept() throws Exception {
        String attempt = calledWithMotor();
        clock.stepBy(Duration.ofSeconds(40));
        ObjectNode begin = Json.MAPPER
                .createObjectNode()
                .put("attempt", attempt)
                .put("serverMs", clock.millis() - 30_000)
                .put("boundMs", 20);
        saved(helper.tap("wind.begin", begin));
    }

    @Test
    void a_viewer_has_no_lists() throws Exception {
        Visitor viewer = Demo.joined(app, "viewer", "", 73);
        assertEquals(403, viewer.get("/checks").statusCode());
    }

    @Test
    void a_pull_test_holds_what_todays_strongest_motor_asks_and_is_noted_of_the_winding_place() throws Exception {
        String event = event();
        String list = helper.get("/checks?list=winding-place&subject=" + event).body();
        double least = Double.parseDouble(CalledForTests.value(list, "test the mount with ([0-9]+) N or more"));
        refused(
                "The mount must hold",
                helper.tap(
                        "step.tick",
                        item("winding-place", event, "mount-pulled").put("answer", String.valueOf(least - 0.1))));
        saved(helper.tap(
                "step.tick", item("winding-place", event, "mount-pulled").put("answer", String.valueOf(least))));
        var forms = new FilledForms(laptop);
        Map<String, String> table = forms.shown(forms.row("stations", "Table by the door"));
        assertEquals(least, Double.parseDouble(table.get("pull-test")), table.toString());
        assertEquals(java.time.LocalDate.now(clock).toString(), table.get("pull-tested"), table.toString());
    }

    @Test
    void a_ratio_or_a_lane_other_than_on_record_is_refused_with_where_to_put_it_right() throws Exception {
        String event = event();
        String attempt = called();
        refused(
                "to 1: turn the crank once",
                helper.tap("step.tick", item("before-winding", attempt, "ratio").put("answer", "9.5")));
        saved(helper.tap(
                "step.tick", item("winding-place", event, "lane-length").put("answer", "3 m")));
        laptop.form("/hall/measure", HallFields.of("4 m", Map.of()));
        refused(
                "has this lane with 4",
                helper.tap(
                        "step.tick", item("winding-place", event, "lane-length").put("answer", "3.94 m")));
        saved(helper.tap(
                "step.tick", item("winding-place", event, "lane-length").put("answer", "3.95 m")));
    }

    @Test
    void a_model_weighed_in_its_list_is_weighed_in_prepare_too() throws Exception {
        String model = CalledForTests.value(
                helper.get("/checks").body(), "/checks\\?list=model-inspection&amp;subject=([^\"]+)\"");
        saved(helper.tap(
                "step.tick", item("model-inspection", model, "model-mass").put("answer", "7.31 g")));
        String row = laptop.get("/prepare/models/row/" + model.substring(model.indexOf('~') + 1))
                .body();
        assertTrue(row.contains("7.31 g"), row);
    }

    @Test
    void a_motor_that_asks_for_more_than_the_lane_has_opens_the_length_again_once() throws Exception {
        String event = event();
        laptop.form("/hall/measure", HallFields.of("1.9 m", Map.of()));
        var forms = new FilledForms(laptop);
        forms.save("motors", forms.row("motors", "A3"), Map.of("loop", "600 mm"));
        saved(helper.tap(
                "step.tick", item("winding-place", event, "lane-length").put("answer", "1.9 m")));
        assertFalse(laptop.get("/now").body().contains("asked again"), "nothing was called yet");
        callWith("A3");
        String now = laptop.get("/now").body();
        assertTrue(now.contains("asked again"), now);
    }

    private void callWith(String tag) throws Exception {
        String card = laptop.get("/now").body();
        String motor = CalledForTests.value(card, "<option value=\"([^\"]+)\"[^>]*>" + tag);
        String entry = CalledForTests.value(card, "name=\"entry\" value=\"([^\"]+)\"");
        String number = CalledForTests.value(card, "name=\"number\" value=\"([^\"]+)\"");
        String model = CalledForTests.value(card, "name=\"model\" value=\"([^\"]+)\"");
        var called =
                laptop.form("/attempt/call", Map.of("entry", entry, "number", number, "motor", motor, "model", model));
        assertEquals(200, called.statusCode(), called.body());
    }
}
