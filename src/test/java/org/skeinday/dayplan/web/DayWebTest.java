package org.skeinday.dayplan.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
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
import org.skeinday.platform.http.Pace;
import org.skeinday.prepare.Prepared;

/** The page Day on the real server, with the real solver and a clock that the test sets. */
@Timeout(90)
class DayWebTest {
    private static final String EVENT = "Saltmarsh Rotor Day";

    @TempDir
    Path root;

    private final SteppedClock clock = new SteppedClock(Clock.systemDefaultZone());
    private App app;
    private Visitor laptop;
    private Prepared forms;

    @BeforeEach
    void start() throws Exception {
        var settings = new App.Settings(
                Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20));
        app = App.start(settings, clock, new SecureRandom());
        laptop = new Visitor(app.port(), "", 61);
        forms = new Prepared(laptop);
        forms.window("Curlew", clock, 5, 65);
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
        assertSays("Curlew 1 wind from", proposed);
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
