package org.skeinday.review.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
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
import org.skeinday.prepare.FilledForms;

/** The page Evening: what is looked at, findings, pictures, side by side, validity both ways. */
@Timeout(90)
class EveningWebTest {
    private static final String EVENT = "Saltmarsh Rotor Day";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 31);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String ok(String path) throws Exception {
        HttpResponse<String> page = laptop.get(path);
        assertEquals(200, page.statusCode(), path + " " + page.body());
        return page.body();
    }

    private static List<String> flights(String page) {
        List<String> ids = new ArrayList<>();
        Matcher found = Pattern.compile("name=\"flight\" value=\"([^\"]+)\"").matcher(page);
        while (found.find()) {
            ids.add(found.group(1));
        }
        return ids;
    }

    /** @return the id of an attempt that was flown and landed */
    private String landed() throws Exception {
        String attempt = CalledForTests.call(laptop);
        for (String to : List.of("released", "landed")) {
            var moved = laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to, "seen", ""));
            assertEquals(200, moved.statusCode(), moved.body());
        }
        return attempt;
    }

    @Test
    void the_last_event_is_shown_with_findings_first_each_linked_to_its_flights() throws Exception {
        FlownSeason.into(app, 72, LocalDateTime.now().minusMinutes(30), 1);
        String page = ok("/evening");
        assertTrue(page.contains("<h1>Saltmarsh Practice Evening</h1>"), page);
        assertTrue(page.indexOf("What it means") < page.indexOf("id=\"flights\""), "findings first");
        assertTrue(page.contains("launch torque") && page.contains(">clear</span>"), page);
        assertTrue(page.contains("Flights 1 to 50 of 85, the last first"), "13 of the demo and 72");
        assertEquals(50, flights(page).size(), "no page is longer");
        String earlier = ok(CalledForTests.value(page, "href=\"(/evening\\?page=1)#flights\""));
        assertEquals(35, flights(earlier).size(), "and the others are on the next one");
        assertTrue(Collections.disjoint(flights(page), flights(earlier)), earlier);
        assertTrue((page + earlier).contains("left out: touched a beam"), "validity with its reason");
        Matcher link = Pattern.compile(
                        "href=\"(/evening\\?about=[^\"]+LAUNCH_TORQUE[^\"]*|/evening\\?about=LAUNCH_TORQUE[^\"]*)#flights\"")
                .matcher(page);
        assertTrue(link.find(), page);
        String behind = ok(link.group(1).replace("&amp;", "&"));
        int flights = flights(behind).size();
        assertTrue(flights > 0 && flights < 85, flights + " of them are behind it");
        assertTrue(behind.contains("Those behind:"), behind);
    }

    @Test
    void pictures_are_drawn_with_their_table_and_what_is_missing_is_said_in_a_line() throws Exception {
        FlownSeason.into(app, 40, LocalDateTime.now().minusMinutes(30), 2);
        String page = ok("/evening");
        assertEquals(4, page.split("<svg ", -1).length - 1, "use, launch torque, remaining, mean speed");
        assertTrue(page.contains("The same as a table"), page);
        assertTrue(page.contains("How far the watches lay apart on each flight: nothing was noted yet."), page);
        assertTrue(page.contains("Conditions over the day: nobody measured them yet."), page);
        assertTrue(page.contains("Winds of batch A: none was read yet."), page);
        assertFalse(page.contains("style="), "the security policy allows none");
    }

    @Test
    void it_is_looked_at_by_day_season_model_batch_and_motor_and_filtered_by_plain_addresses() throws Exception {
        FlownSeason.into(app, 20, LocalDateTime.now().minusMinutes(30), 3);
        String page = ok("/evening");
        Matcher looks = Pattern.compile("<option value=\"((event|season|day|model|batch|motor):[^\"]+)\"")
                .matcher(page);
        List<String> kinds = new ArrayList<>();
        while (looks.find()) {
            kinds.add(looks.group(2));
            String other = ok("/evening?look=" + looks.group(1).replace(" ", "%20"));
            assertTrue(flights(other).size() > 0, looks.group(1));
        }
        assertTrue(kinds.containsAll(List.of("event", "season", "day", "model", "batch", "motor")), kinds.toString());
        String spoilt = ok("/evening?valid=no");
        assertEquals(spoilt(page), flights(spoilt).size());
        assertTrue(spoilt(page) > 0 && spoilt(page) == spoilt(spoilt), spoilt);
        assertEquals(
                flights(page).size() - spoilt(page),
                flights(ok("/evening?valid=yes")).size());
        String model = CalledForTests.value(page, "<option value=\"([^\":]+)\">Reed One</option>");
        assertTrue(flights(ok("/evening?model=" + model)).size() < flights(page).size());
        assertTrue(ok("/evening?model=none").contains("No flight fits"));
        assertEquals(404, laptop.get("/evening?look=model:none").statusCode());
        assertEquals(404, laptop.get("/evening?page=x").statusCode());
        assertEquals(200, laptop.get("/evening?page=99").statusCode());
    }

    private static int spoilt(String page) {
        return page.split("class=\"spoilt-row\"", -1).length - 1;
    }

    @Test
    void two_to_four_stand_side_by_side_and_nothing_else_does() throws Exception {
        List<String> ids = flights(ok("/evening"));
        String two = ok("/evening/compare?flight=" + ids.get(0) + "&flight=" + ids.get(1));
        assertTrue(two.contains("launch torque") && two.contains("differs"), two);
        String four = "/evening/compare?flight=" + String.join("&flight=", ids.subList(0, 4));
        assertEquals(200, laptop.get(four).statusCode());
        for (String wrong : List.of(
                "/evening/compare",
                "/evening/compare?flight=" + ids.get(0),
                "/evening/compare?flight=" + ids.get(0) + "&flight=nobody",
                "/evening/compare?flight=" + String.join("&flight=", ids.subList(0, 5)))) {
            HttpResponse<String> refused = laptop.get(wrong);
            assertEquals(422, refused.statusCode(), wrong);
            assertTrue(refused.body().contains("Tick two to four flights"), refused.body());
        }
    }

    @Test
    void a_flight_is_marked_invalid_with_its_reason_and_valid_again() throws Exception {
        String attempt = landed();
        String page = "/evening/flight/" + attempt;
        assertTrue(ok(page).contains("<dd>counts</dd>"));
        var silent = laptop.form(page, Map.of("verdict", "spoilt", "remaining", "", "spoilt", " ", "contact", ""));
        assertEquals(422, silent.statusCode());
        assertTrue(silent.body().contains("Say why it says nothing"), silent.body());
        var slip = laptop.form(
                page, Map.of("verdict", "spoilt", "remaining", "x", "spoilt", "touched a beam", "contact", "0:61"));
        assertEquals(422, slip.statusCode());
        assertTrue(slip.body().contains("value=\"0:61\"") && slip.body().contains("Crank turns must be"), slip.body());
        var spoilt = laptop.form(
                page, Map.of("verdict", "spoilt", "remaining", "", "spoilt", "touched a beam", "contact", "0:12.5"));
        assertEquals(200, spoilt.statusCode(), spoilt.body());
        assertTrue(spoilt.body().contains("left out: touched a beam"), spoilt.body());
        assertTrue(spoilt.body().contains("after 0:12"), spoilt.body());
        assertTrue(ok("/evening").contains("left out: touched a beam"));
        var other = laptop.form(page, Map.of("verdict", "valid", "remaining", "", "seen", ""));
        assertEquals(409, other.statusCode(), "who judged what it was before");
        assertTrue(other.body().contains("has judged this flight meanwhile: it says nothing"), other.body());
        var valid = laptop.form(
                page,
                Map.of(
                        "verdict",
                        "valid",
                        "remaining",
                        "",
                        "spoilt",
                        "touched a beam",
                        "contact",
                        "0:12.5",
                        "seen",
                        "touched a beam"));
        assertEquals(200, valid.statusCode(), valid.body());
        assertTrue(valid.body().contains("<dd>counts</dd>"), valid.body());
        assertEquals(404, laptop.get("/evening/flight/nobody").statusCode());
        assertEquals(
                404,
                laptop.form("/evening/flight/nobody", Map.of("verdict", "valid"))
                        .statusCode());
    }

    @Test
    void what_is_still_to_be_keyed_in_is_named_with_a_link_once_the_window_has_closed() throws Exception {
        var clock = new SteppedClock(Clock.systemDefaultZone());
        var settings = new App.Settings(Demo.into(root.resolve("later")), 0, false, Pace.normal());
        try (App later = App.start(settings, clock, new SecureRandom())) {
            laptop = new Visitor(later.port(), "", 33);
            landed();
            String early = ok("/evening");
            assertTrue(early.contains("<h1>" + EVENT + "</h1>") && early.contains("lacks turns wound"), early);
            assertFalse(early.contains("attempts are not in the record"), "they may still be flown");
            clock.stepBy(Duration.ofHours(3));
            String page = ok("/evening");
            assertTrue(page.contains("2 of 3 attempts are not in the record"), page);
            assertTrue(page.contains("3 of 3 attempts are not in the record"), page);
            assertTrue(page.contains("href=\"/key-in\"") && page.contains("lacks turns wound"), page);
            abandoned("Avocet");
            abandoned("Avocet");
            String tried = ok("/evening");
            assertEquals(2, tried.split("2 of 3 attempts are not in the record", -1).length - 1, tried);
            assertFalse(tried.contains("3 of 3 attempts"), "what was tried is in the record: " + tried);
        }
    }

    private void abandoned(String entry) throws Exception {
        String id = new FilledForms(laptop).row("entries", entry).replaceFirst(".*/", "");
        String called =
                laptop.form("/attempt/call", Map.of("entry", id, "motor", "")).body();
        String attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        var given = laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "a rib broke"));
        assertEquals(200, given.statusCode(), given.body());
    }

    @Test
    void a_captain_may_see_it_a_helper_may_not_and_nobody_while_it_is_quiet() throws Exception {
        List<String> pages = List.of("/evening", "/evening/pictures", "/evening/compare", "/search?q=a");
        for (String role : List.of("viewer", "helper", "timekeeper")) {
            Visitor who = Demo.joined(app, role, "", 32);
            for (String path : pages) {
                assertEquals(403, who.get(path).statusCode(), role + " " + path);
            }
            assertEquals(403, who.form("/evening/change", Map.of("event", "x")).statusCode(), role);
            assertEquals(403, who.get("/evening/season").statusCode(), role);
        }
        Visitor captain = Demo.joined(app, "captain", "", 33);
        assertEquals(200, captain.get("/evening").statusCode());
        Visitor coach = Demo.joined(app, "coach", Demo.PIN, 34);
        var forms = new FilledForms(laptop);
        forms.save("terms", forms.row("terms", EVENT), Map.of("outside-help", "none"));
        String attempt = CalledForTests.call(laptop);
        for (Visitor who : List.of(laptop, captain, coach)) {
            for (String path : pages) {
                assertEquals(403, who.get(path).statusCode(), path);
            }
            assertEquals(403, who.get("/evening/flight/" + attempt).statusCode());
            assertEquals(
                    403,
                    who.form("/evening/flight/" + attempt, Map.of("verdict", "valid"))
                            .statusCode());
        }
    }

    @Test
    void without_any_flight_it_says_where_flights_come_from() throws Exception {
        try (App empty = Demo.startEmpty(root.resolve("empty"))) {
            Visitor first = new Visitor(empty.port(), "", 35);
            HttpResponse<String> page = first.get("/evening");
            assertEquals(200, page.statusCode());
            assertTrue(page.body().contains("No flight is in the record yet"), page.body());
            assertEquals(200, first.get("/evening/pictures").statusCode());
            assertEquals(200, first.get("/evening/season").statusCode());
        }
    }
}
