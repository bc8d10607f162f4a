package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
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
import org.skeinday.prepare.FilledForms;

/** Two devices act on one attempt at once, both from the same page: one wins, the other is told who did what. */
@Timeout(120)
class SameSecondWebTest {
    private final ExecutorService both = Executors.newFixedThreadPool(2);

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor captain;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 61);
        captain = Demo.joined(app, "captain", "", 62);
    }

    @AfterEach
    void stop() throws Exception {
        both.shutdownNow();
        app.close();
    }

    /** Sent by both; each form was on its page before the other's arrived. */
    private List<HttpResponse<String>> atOnce(Callable<HttpResponse<String>> one, Callable<HttpResponse<String>> other)
            throws Exception {
        List<HttpResponse<String>> answers = new ArrayList<>();
        for (Future<HttpResponse<String>> answer : both.invokeAll(List.of(one, other))) {
            answers.add(answer.get());
        }
        return answers;
    }

    /** One was taken; the other hears who was quicker and what that was. */
    private static void oneWins(List<HttpResponse<String>> answers, String first, String second) {
        List<Integer> states = answers.stream().map(HttpResponse::statusCode).toList();
        boolean laptopWon = states.get(0) == 200;
        assertEquals(
                List.of(laptopWon ? 200 : 409, laptopWon ? 409 : 200),
                states,
                () -> answers.get(0).body() + answers.get(1).body());
        String told = answers.get(laptopWon ? 1 : 0).body();
        String who = laptopWon ? "The laptop said '" + first + "' at " : "Another device said '" + second + "' at ";
        assertTrue(told.contains(who), who + " in " + told);
    }

    private static void oneWins(List<HttpResponse<String>> answers, String said) {
        oneWins(answers, said, said);
    }

    private String called() throws Exception {
        CalledForTests.callWithItsMotor(laptop);
        return CalledForTests.letWind(laptop);
    }

    /** As the page shows it now. */
    private Map<String, String> move(String attempt, String to) throws Exception {
        return Map.of("attempt", attempt, "to", to, "seen", seen(attempt));
    }

    private String seen(String attempt) throws Exception {
        return CalledForTests.value(laptop.get("/now?attempt=" + attempt).body(), "name=\"seen\" value=\"([^\"]*)\"");
    }

    private void moveAtOnce(String attempt, String to, String said) throws Exception {
        Map<String, String> form = move(attempt, to);
        oneWins(atOnce(() -> laptop.form("/attempt/move", form), () -> captain.form("/attempt/move", form)), said);
    }

    @Test
    void an_entry_is_called_once() throws Exception {
        String now = laptop.get("/now").body();
        Map<String, String> form = Map.of(
                "entry", CalledForTests.value(now, "name=\"entry\" value=\"([^\"]+)\""),
                "number", CalledForTests.value(now, "name=\"number\" value=\"([^\"]+)\""),
                "motor", CalledForTests.value(now, "(?s)name=\"motor\".*?<option value=\"([^\"]+)\""));
        List<HttpResponse<String>> answers =
                atOnce(() -> laptop.form("/attempt/call", form), () -> captain.form("/attempt/call", form));
        oneWins(answers, "Call");
        String told = answers.get(0).statusCode() == 409
                ? answers.get(0).body()
                : answers.get(1).body();
        assertTrue(told.contains("attempt 1 was called meanwhile"), told);
        assertEquals(
                1,
                Pattern.compile("href=\"/attempt/([^\"]+)\"")
                        .matcher(laptop.get("/results").body())
                        .results()
                        .map(found -> found.group(1))
                        .distinct()
                        .count());
    }

    @Test
    void a_page_that_counts_further_than_the_record_is_told_so() throws Exception {
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        HttpResponse<String> answer = laptop.form("/attempt/call", Map.of("entry", entry, "number", "5"));
        assertEquals(409, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("No attempt of Curlew was called yet"), answer.body());
    }

    @Test
    void it_is_wound_and_released_once_each() throws Exception {
        String attempt = called();
        moveAtOnce(attempt, "winding", "Start winding");
        moveAtOnce(attempt, "holding", "Wound");
        moveAtOnce(attempt, "released", "Released");
        moveAtOnce(attempt, "landed", "Landed");
    }

    @Test
    void released_and_abandoned_at_once_are_not_both_true() throws Exception {
        String attempt = called();
        laptop.form("/attempt/move", move(attempt, "winding"));
        laptop.form("/attempt/move", move(attempt, "holding"));
        Map<String, String> released = move(attempt, "released");
        Map<String, String> abandoned =
                Map.of("attempt", attempt, "reason", "the hook opened", "seen", released.get("seen"));
        oneWins(
                atOnce(() -> laptop.form("/attempt/move", released), () -> captain.form("/attempt/give-up", abandoned)),
                "Released",
                "Abandon attempt");
    }

    @Test
    void it_is_abandoned_once() throws Exception {
        String attempt = called();
        Map<String, String> form = Map.of("attempt", attempt, "reason", "a foot broke", "seen", seen(attempt));
        oneWins(
                atOnce(() -> laptop.form("/attempt/give-up", form), () -> captain.form("/attempt/give-up", form)),
                "Abandon attempt");
    }

    private String id(String kind, String name) throws Exception {
        return new FilledForms(laptop).row(kind, name).replaceFirst(".*/", "");
    }

    @Test
    void another_motor_is_taken_once_and_who_speaks_of_the_one_before_is_told_who_went_on() throws Exception {
        String motor = id("motors", "A3");
        String called = laptop.form("/attempt/call", Map.of("entry", id("entries", "Curlew"), "motor", motor))
                .body();
        String attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        Map<String, String> one = Map.of("attempt", attempt, "seenMotor", motor, "motor", id("motors", "B5"));
        Map<String, String> other = Map.of("attempt", attempt, "seenMotor", motor, "motor", id("motors", "B2"));
        oneWins(
                atOnce(() -> laptop.form("/attempt/take-motor", one), () -> captain.form("/attempt/take-motor", other)),
                "Another motor");
        CalledForTests.letWind(laptop, attempt);
        laptop.form("/attempt/move", move(attempt, "winding"));
        Map<String, String> before = Map.of("attempt", attempt, "motor", motor, "turns", "20");
        for (String form : new String[] {"/attempt/run-back", "/attempt/broke-too"}) {
            HttpResponse<String> late = captain.form(form, before);
            assertEquals(409, late.statusCode(), late.body());
            String told = "another motor by now: look again. The laptop said 'Start winding' at ";
            assertTrue(late.body().contains(told), late.body());
        }
    }

    /** The form of a page that is still to be sent, as the page fills it in. */
    private static String seen(HttpResponse<String> page, String address, String field) {
        String form = page.body().substring(page.body().indexOf("hx-post=\"" + address + "\""));
        return CalledForTests.value(form, "name=\"" + field + "\" value=\"([^\"]*)\"");
    }

    private static Map<String, String> with(Map<String, String> form, String field, String value) {
        Map<String, String> more = new HashMap<>(form);
        more.put(field, value);
        return more;
    }

    private List<HttpResponse<String>> bothSay(
            String address, Map<String, String> form, String field, String one, String other) throws Exception {
        return atOnce(
                () -> laptop.form(address, with(form, field, one)),
                () -> captain.form(address, with(form, field, other)));
    }

    @Test
    void torques_and_people_that_two_set_at_once_are_set_once_and_the_other_hears_of_it() throws Exception {
        String attempt = called();
        Map<String, String> aim = Map.of(
                "attempt",
                attempt,
                "ceiling",
                "",
                "unit",
                "in-ozf",
                "aim-seen",
                seen(laptop.get("/winding"), "/winding/aim", "aim-seen"));
        oneWins(bothSay("/winding/aim", aim, "launch", "0.2", "0.3"), "Set launch torque and torque limit");
        String fresh = seen(laptop.get("/winding"), "/winding/aim", "aim-seen");
        assertEquals(
                200,
                captain.form("/winding/aim", with(with(aim, "aim-seen", fresh), "launch", "0.3"))
                        .statusCode());
        HttpResponse<String> now = laptop.get("/now");
        Map<String, String> hands = Map.of(
                "entry", seen(now, "/attempt/name-hands", "entry"),
                "number", seen(now, "/attempt/name-hands", "number"),
                "attempt", attempt,
                "hands-seen", seen(now, "/attempt/name-hands", "hands-seen"));
        String winder = CalledForTests.value(now.body(), "name=\"hand-winds\">.*?<option value=\"([^\"]+)\"");
        oneWins(bothSay("/attempt/name-hands", hands, "hand-winds", winder, ""), "Name them for this attempt");
    }

    @Test
    void a_time_that_two_type_for_one_watch_is_typed_once_and_each_types_for_a_watch_of_its_own() throws Exception {
        String attempt = called();
        laptop.form("/attempt/move", move(attempt, "released"));
        laptop.form("/attempt/move", move(attempt, "landed"));
        HttpResponse<String> now = laptop.get("/now");
        Map<String, String> typed = Map.of(
                "attempt", attempt, "typed-slot", "1", "typed-seen", seen(now, "/attempt/type-time", "typed-seen"));
        oneWins(bothSay("/attempt/type-time", typed, "typed", "1:01.10", "1:01.20"), "Type a watch's time");
        Map<String, String> beside = with(with(typed, "typed-slot", "2"), "typed", "1:01.30");
        assertEquals(200, laptop.form("/attempt/type-time", beside).statusCode());
        Map<String, String> judged = Map.of(
                "attempt",
                attempt,
                "slot",
                "1",
                "judged",
                "so",
                "seen",
                seen(laptop.get("/now"), "/watch/judge", "seen"));
        oneWins(
                bothSay("/watch/judge", judged, "verdict", "failed", "left-out"),
                "watch 1: it failed",
                "watch 1: left out");
    }

    @Test
    void an_announced_time_is_noted_once() throws Exception {
        new FilledForms(laptop)
                .save(
                        "events",
                        new FilledForms(laptop).row("events", "Saltmarsh Rotor Day"),
                        Map.of("kind", "visiting"));
        String attempt = called();
        for (String to : List.of("released", "landed")) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to));
        }
        Map<String, String> said = Map.of(
                "attempt", attempt, "announced-seen", seen(laptop.get("/now"), "/attempt/announce", "announced-seen"));
        oneWins(bothSay("/attempt/announce", said, "announced", "1:01.1", "1:01.7"), "Note the announced time");
    }

    @Test
    void where_a_motor_parted_is_said_once_and_who_saw_it_elsewhere_is_told() throws Exception {
        String attempt = called();
        laptop.form("/attempt/move", move(attempt, "winding"));
        laptop.form("/attempt/broke", Map.of("attempt", attempt));
        String motor = seen(laptop.get("/first"), "/attempt/people-safe", "motor");
        laptop.form("/attempt/people-safe", Map.of("attempt", attempt, "motor", motor));
        Map<String, String> parted = Map.of(
                "attempt",
                attempt,
                "motor",
                motor,
                "where-seen",
                seen(laptop.get("/first"), "/attempt/parted", "where-seen"));
        oneWins(bothSay("/attempt/parted", parted, "place", "knot", "hook"), "Where did it part?");
        Map<String, String> corrected = Map.of("attempt", attempt, "motor", motor, "place", "ring");
        assertEquals(
                200, laptop.form("/attempt/parted", corrected).statusCode(), "who corrects it knows what was said");
    }
}
