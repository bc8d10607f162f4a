package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
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
}
