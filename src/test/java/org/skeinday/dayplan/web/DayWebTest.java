package org.skeinday.dayplan.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalTime;
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

/** The page Day on the real server, with the real solver and a clock that the test sets. */
@Timeout(90)
class DayWebTest {
    private static final String EVENT = "Saltmarsh Rotor Day";

    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private FilledForms forms;
    private LocalTime opens;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        laptop = new Visitor(app.port(), "", 61);
        forms = new FilledForms(laptop);
        opens = forms.window("Curlew", clock, 5, 65).minusMinutes(60).toLocalTime();
        forms.window("Avocet", clock, 70, 130);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private HttpResponse<String> propose(Map<String, String> change) throws Exception {
        return laptop.form("/day/propose", change);
    }

    private static String proposal(String html) {
        Matcher found = Pattern.compile("name=\"proposal\" value=\"([^\"]+)\"").matcher(html);
        assertTrue(found.find(), html);
        return found.group(1);
    }

    private String take() throws Exception {
        HttpResponse<String> proposed = propose(Map.of());
        assertEquals(200, proposed.statusCode(), proposed.body());
        HttpResponse<String> taken = laptop.form("/day/take", Map.of("proposal", proposal(proposed.body())));
        assertEquals(200, taken.statusCode(), taken.body());
        return laptop.get("/day").body();
    }

    private static void assertSays(String words, String page) {
        assertTrue(page.contains(words), words + " in " + page);
    }

    @Test
    void a_plan_is_proposed_taken_and_shown_with_what_is_in_hand() throws Exception {
        assertSays("There is no plan yet. Ask for one", laptop.get("/day").body());
        assertSays("Proven: no plan has more time in hand", propose(Map.of()).body());
        String day = take();
        assertSays("Taken at", day);
        assertSays("Every window is kept with at least", day);
        for (String task : new String[] {"Curlew 1 wind", "Curlew 3 fly", "Avocet 1 load", "Avocet 3 run back"}) {
            assertSays(task, day);
        }
        assertSays("nothing better was found", propose(Map.of()).body());
    }

    @Test
    void everybody_has_a_list_of_their_own() throws Exception {
        take();
        String person = Demo.person(app, "Tomek");
        String token = app.joinLink().substring(app.joinLink().indexOf('#') + 1);
        var joined = new Visitor(app.port(), "", 62)
                .form("/join", Map.of("token", token, "role", "helper", "person", person));
        String cookie = joined.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
        String page = new Visitor(app.port(), cookie, 63).get("/day").body();
        assertTrue(page.contains("<h2>Yours</h2>") || !page.contains(", Tomek"), page);
        assertFalse(page.contains("Propose a plan"), "a helper changes no plan");
        assertEquals(
                403,
                new Visitor(app.port(), cookie, 64)
                        .form("/day/propose", Map.of())
                        .statusCode());
    }

    @Test
    void what_slips_is_said_and_a_new_plan_says_what_moved() throws Exception {
        take();
        clock.stepBy(Duration.ofMinutes(12));
        String slipped = laptop.get("/day").body();
        assertSays("later than planned", slipped);
        String proposed = propose(Map.of()).body();
        assertSays("Curlew 1: ", proposed);
        assertSays(" later, from ", proposed);
        laptop.form("/day/take", Map.of("proposal", proposal(proposed)));
        assertFalse(laptop.get("/day").body().contains("later than planned"));
    }

    @Test
    void what_does_not_fit_is_given_up_last_first_with_the_reason_and_ways_out() throws Exception {
        forms.window("Curlew", clock, 5, 17);
        String proposed = propose(Map.of()).body();
        assertSays("Does not fit:", proposed);
        assertSays("Curlew 3", proposed);
        assertSays("These cannot be kept together", proposed);
        assertSays("Any one of these would do", proposed);
        assertSays("let Curlew 2 fly end up to", proposed);
        assertFalse(proposed.contains("sooner after"), "nothing begins before what it follows: " + proposed);
        assertSays("Take this plan", proposed);
    }

    @Test
    void a_change_is_tried_before_it_is_made() throws Exception {
        take();
        String tried = propose(Map.of("change", "WINDOW_MOVES Avocet", "minutes", "15"))
                .body();
        assertSays("If the window of Avocet moves by 15 min", tried);
        String wrong = laptop.form("/day/propose", Map.of("change", "PART_LONGER wind", "minutes", "much"))
                .body();
        assertSays("Minutes are a whole number", wrong);
        assertSays(
                "If Curlew 3 is left out",
                propose(Map.of("change", "ATTEMPT_OUT Curlew 3")).body());
    }

    @Test
    void who_is_away_upsets_the_plan_says_so_everywhere_and_leads_to_a_proposal() throws Exception {
        take();
        String page = laptop.get("/day").body();
        String ines = choice(page, "away", "Ines is away");
        HttpResponse<String> told = laptop.form("/day/tell", Map.of("event", event(page), "what", ines, "minutes", ""));
        assertEquals(200, told.statusCode(), told.body());
        assertSays("hx-post=\"/day/propose\" hx-trigger=\"load\"", told.body());
        String after = laptop.get("/day").body();
        assertSays("Ines is away for the rest of the day", after);
        assertSays("Ines is away for the rest of the day", laptop.get("/").body());
        assertSays("Ines is away for the rest of the day", propose(Map.of()).body());
        assertSays(
                "That is known already",
                laptop.form("/day/tell", Map.of("event", event(page), "what", ines, "minutes", ""))
                        .body());
        Matcher going = Pattern.compile("name=\"id\" value=\"([^\"]+)\"").matcher(after);
        assertTrue(going.find(), after);
        assertEquals(
                200,
                laptop.form("/day/over", Map.of("event", event(page), "id", going.group(1)))
                        .statusCode());
        assertFalse(laptop.get("/day").body().contains("for the rest of the day</li>"));
        assertFalse(laptop.get("/").body().contains("The plan has slipped"));
    }

    @Test
    void a_person_who_comes_back_is_planned_again_from_then_on() throws Exception {
        take();
        String page = laptop.get("/day").body();
        laptop.form(
                "/day/tell",
                Map.of("event", event(page), "what", choice(page, "away", "Ines is away"), "minutes", "30"));
        String proposed = propose(Map.of()).body();
        laptop.form("/day/take", Map.of("proposal", proposal(proposed)));
        String day = laptop.get("/day").body();
        assertSays("Every window is kept with at least", day);
        assertSays("Ines away", day);
        assertFalse(laptop.get("/").body().contains("The plan has slipped"), "taken: nothing is new");
        clock.stepBy(Duration.ofMinutes(3));
        assertFalse(
                laptop.get("/day").body().contains("cannot be kept"),
                laptop.get("/day").body());
    }

    @Test
    void a_model_to_be_mended_holds_its_entry_up_and_minutes_must_be_minutes() throws Exception {
        take();
        String page = laptop.get("/day").body();
        String curlew = choice(page, "repair", "Curlew: the model must be mended");
        String wrong = laptop.form("/day/tell", Map.of("event", event(page), "what", curlew, "minutes", "soon"))
                .body();
        assertSays("Minutes are whole numbers from 0 to 720", wrong);
        laptop.form("/day/tell", Map.of("event", event(page), "what", curlew, "minutes", "10", "cure", "5"));
        assertSays("Curlew: the model is mended, until", laptop.get("/").body());
        String proposed = propose(Map.of()).body();
        assertSays("Curlew 1: ", proposed);
        laptop.form("/day/take", Map.of("proposal", proposal(proposed)));
        clock.stepBy(Duration.ofMinutes(2));
        assertFalse(
                laptop.get("/day").body().contains("cannot be kept"),
                laptop.get("/day").body());
    }

    @Test
    void a_motor_that_falls_and_a_window_that_moves_are_named() throws Exception {
        String day = take();
        Matcher planned = Pattern.compile("Avocet 1 wind</th><td>[^<]*</td><td>([^<]+)</td>")
                .matcher(day);
        assertTrue(planned.find(), day);
        forms.window("Curlew", clock, 10, 70);
        String moved = laptop.get("/").body();
        assertSays("The window of Curlew closes at", moved);
        assertSays("no longer at", moved);
        assertSays("/day?propose=yes", moved);
        assertSays("hx-trigger=\"load\"", laptop.get("/day?propose=yes").body());
        String motor = forms.row("motors", planned.group(1)).replaceFirst(".*/", "");
        laptop.tap(
                "bench.step", Json.MAPPER.createObjectNode().put("motor", motor).put("deed", "fall"));
        assertSays(
                "Motor " + planned.group(1) + " cannot be used any more",
                laptop.get("/day").body());
    }

    @Test
    void motors_that_are_handed_in_stay_in_the_plan_and_their_bench_work_is_planned_inside_the_window()
            throws Exception {
        String free = take();
        assertSays("Curlew 1 prepare", free);
        for (String tag : new String[] {"A3", "B2", "C1"}) {
            String motor = forms.row("motors", tag).replaceFirst(".*/", "");
            String answer = laptop.tap(
                            "bench.impound",
                            Json.MAPPER.createObjectNode().put("motor", motor).put("in", true))
                    .toString();
            assertTrue(answer.contains("saved"), answer);
        }
        assertFalse(
                laptop.get("/day").body().contains("cannot be used any more"),
                laptop.get("/day").body());
        laptop.form("/day/take", Map.of("proposal", proposal(propose(Map.of()).body())));
        String planned = laptop.get("/day").body();
        Matcher prepare = Pattern.compile("<td>([0-9:]+) – ([0-9:]+)</td><th scope=\"row\">Curlew 1 prepare")
                .matcher(planned);
        assertTrue(prepare.find(), planned);
        long before = Duration.between(LocalTime.parse(prepare.group(1)), opens).toMinutes();
        assertTrue(
                Math.floorMod(-before, 24 * 60) <= 60, // over midnight too
                prepare.group() + " and the window is open for an hour from " + opens);
    }

    private void tell(String kind, String words, String minutes) throws Exception {
        String page = laptop.get("/day").body();
        HttpResponse<String> told = laptop.form(
                "/day/tell", Map.of("event", event(page), "what", choice(page, kind, words), "minutes", minutes));
        assertEquals(200, told.statusCode(), told.body());
    }

    @Test
    void who_does_nothing_that_is_planned_may_be_away_before_and_after_a_plan_and_nothing_slips() throws Exception {
        tell("away", "Mattis is away", "20");
        take();
        tell("away", "Ayla is away", "30");
        for (String path : new String[] {"/", "/day"}) {
            HttpResponse<String> page = laptop.get(path);
            assertEquals(200, page.statusCode(), page.body());
            assertFalse(page.body().contains("cannot be kept"), page.body());
        }
        assertSays("Every window is kept with at least", laptop.get("/day").body());
    }

    @Test
    void without_anybody_who_loads_there_is_no_plan_whether_it_is_tried_or_told() throws Exception {
        tell("away", "Jorun is away", "");
        String ines = choice(laptop.get("/day").body(), "PERSON_AWAY", "Ines is away");
        String tried = propose(Map.of("change", ines)).body();
        tell("away", "Ines is away", "");
        String told = propose(Map.of()).body();
        for (String proposed : new String[] {tried, told}) {
            assertSays("cleared for loads: nobody", proposed);
            assertFalse(proposed.contains("Proven:"), proposed);
        }
    }

    @Test
    void what_a_plan_has_given_up_is_no_news_until_it_fits_again() throws Exception {
        forms.window("Curlew", clock, 5, 17);
        take();
        String page = laptop.get("/day").body();
        assertFalse(page.contains("Since the plan was taken"), page);
        assertSays("Every window is kept with at least", page);
        assertSays("The plan in force stays", propose(Map.of()).body());
        forms.window("Curlew", clock, 5, 65);
        String wider = propose(Map.of()).body();
        assertSays("Curlew 3", wider);
        assertSays("Take this plan", wider);
    }

    @Test
    void an_attempt_that_is_left_out_by_choice_stays_out() throws Exception {
        take();
        String tried = propose(Map.of("change", "ATTEMPT_OUT Avocet 3")).body();
        laptop.form("/day/take", Map.of("proposal", proposal(tried)));
        String page = laptop.get("/day").body();
        assertFalse(page.contains("Avocet 3 wind"), page);
        assertFalse(page.contains("Since the plan was taken"), page);
    }

    @Test
    void one_attempt_that_is_late_takes_nothing_from_the_others() throws Exception {
        take();
        String entry = CalledForTests.value(
                laptop.get("/now").body(),
                "name=\"entry\" value=\"([^\"]+)\">(?:<input[^>]*>)*<button aria-label=\"Call Curlew\"");
        laptop.form("/attempt/call", Map.of("entry", entry));
        clock.stepBy(Duration.ofMinutes(62));
        String proposed = propose(Map.of()).body();
        assertFalse(proposed.contains("Avocet 1,") || proposed.contains("There is no plan"), proposed);
        assertSays("Avocet 1", proposed);
    }

    @Test
    void a_repair_that_goes_as_told_is_no_slip() throws Exception {
        take();
        tell("repair", "Curlew: the model must be mended", "20");
        laptop.form("/day/take", Map.of("proposal", proposal(propose(Map.of()).body())));
        clock.stepBy(Duration.ofMinutes(9));
        assertFalse(
                laptop.get("/day").body().contains("later than planned"),
                laptop.get("/day").body());
    }

    @Test
    void where_motors_are_handed_in_each_is_ready_by_then_or_said_to_be_late() throws Exception {
        String by = java.time.LocalDateTime.now(clock)
                .plusMinutes(16)
                .format(java.time.format.DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm"));
        forms.save("terms", forms.row("terms", EVENT), Map.of("hand-in-by", by));
        String day = laptop.get("/day").body();
        assertSays("Motors are handed in by", day);
        assertSays("A3 needs 21 min on the Bench: it fits only with the least waits (3 min), at once", day);
        String a3 = forms.row("motors", "A3").replaceFirst(".*/", "");
        for (String deed : new String[] {"lubricate", "condition", "rest", "ready-now"}) {
            laptop.tap(
                    "bench.step",
                    Json.MAPPER.createObjectNode().put("motor", a3).put("deed", deed));
        }
        assertSays("A3 is ready", laptop.get("/day").body());
        clock.stepBy(Duration.ofMinutes(14));
        assertSays(
                "B2 needs 21 min on the Bench: it does not fit any more",
                laptop.get("/day").body());
    }

    private static String event(String page) {
        Matcher found = Pattern.compile("name=\"event\" value=\"([^\"]+)\"").matcher(page);
        assertTrue(found.find(), page);
        return found.group(1);
    }

    private static String choice(String page, String kind, String words) {
        Matcher found = Pattern.compile("value=\"(" + kind + " [^\"]+)\">" + Pattern.quote(words))
                .matcher(page);
        assertTrue(found.find(), words + " in " + page);
        return found.group(1);
    }

    @Test
    void a_proposal_beside_a_plan_that_is_no_longer_in_force_is_not_taken() throws Exception {
        String one = proposal(propose(Map.of()).body());
        String two = proposal(propose(Map.of()).body());
        assertEquals(200, laptop.form("/day/take", Map.of("proposal", one)).statusCode());
        HttpResponse<String> late = laptop.form("/day/take", Map.of("proposal", two));
        assertEquals(409, late.statusCode());
        assertSays("Someone else has taken another plan meanwhile", late.body());
        assertEquals(
                409, laptop.form("/day/take", Map.of("proposal", "nothing")).statusCode());
    }

    @Test
    void while_it_is_quiet_no_plan_is_computed() throws Exception {
        take();
        forms.save("terms", forms.row("terms", EVENT), Map.of("outside-help", "none"));
        String now = laptop.get("/").body();
        Matcher entry = Pattern.compile("name=\"entry\" value=\"([^\"]+)\"").matcher(now);
        assertTrue(entry.find());
        laptop.form("/attempt/call", Map.of("entry", entry.group(1)));
        assertEquals(403, propose(Map.of()).statusCode());
    }
}
