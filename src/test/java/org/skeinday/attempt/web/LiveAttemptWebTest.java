package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
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
import org.skeinday.prepare.FilledForms;

/** One attempt is the same for captain, reader and everybody else: what one says the others see, and what comes first. */
@Timeout(120)
class LiveAttemptWebTest {
    private static final List<String> PAGES = List.of("/", "/timing", "/winding", "/bench", "/checks", "/day");

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor reader;
    private String attempt;
    private String motor;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 91);
        reader = Demo.joined(app, "timekeeper", "", 92);
        motor = motor("A3");
        String entry = CalledForTests.value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private String begin() throws Exception {
        String id = reader.newId();
        JsonNode answer =
                reader.tapAs(id, "wind.begin", content().put("attempt", attempt).put("motor", motor));
        assertEquals("saved", answer.path("state").asText(), answer.toString());
        return id + "-0";
    }

    private void tap(String wind, String phase) throws Exception {
        ObjectNode tap = content().put("wind", wind).put("phase", phase).put("elapsedMs", 60_000);
        assertEquals("saved", reader.tap("wind.phase", tap).path("state").asText());
    }

    private HttpResponse<String> move(String to) throws Exception {
        return laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to));
    }

    private HttpResponse<String> say(Visitor who, String address, Map<String, String> more) throws Exception {
        Map<String, String> form = new java.util.HashMap<>(Map.of("attempt", attempt, "motor", motor));
        form.putAll(more);
        return who.form(address, form);
    }

    private static void says(String words, String html) {
        assertTrue(html.contains(words), words + " in " + html);
    }

    private static void saysNot(String words, String html) {
        assertFalse(html.contains(words), words + " in " + html);
    }

    @Test
    void after_a_break_people_come_first_then_where_it_parted_then_the_spare_by_one_tap() throws Exception {
        String wind = begin();
        tap(wind, "broke");
        for (String address : PAGES) {
            String page = laptop.get(address).body();
            says("Broke. Hands off. Check people.", page);
            says("Everyone unhurt, both ends found</button>", page);
        }
        for (String address : List.of("/now", "/winding/part")) {
            String part = laptop.get(address).body();
            for (String later :
                    List.of("data-until", "Another motor", "In the strand", "take-motor", "<dt>turns limit")) {
                saysNot(later, section(part));
            }
        }
        String early = say(laptop, "/attempt/take-motor", Map.of("motor", motor("B2"), "seenMotor", motor))
                .body();
        says("its motor broke. What can be done now: Everyone unhurt, both ends found, It did not break.", early);
        says(
                "First: is everyone unhurt, are both ends found?",
                say(reader, "/attempt/parted", Map.of("place", "knot")).body());
        says("Where did it part?", say(reader, "/attempt/people-safe", Map.of()).body());
        saysNot("Another motor", section(laptop.get("/now").body()));
        says(
                "Where a motor parted must be one of strand, knot, ring, hook, unknown",
                say(reader, "/attempt/parted", Map.of("place", "elbow")).body());
        assertEquals(
                200, say(reader, "/attempt/parted", Map.of("place", "knot")).statusCode());
        saysNot("Where did it part?", laptop.get("/").body());
        says("Another motor", laptop.get("/now").body());
        says("attempt.take-motor", reader.get("/winding/part").body());
        HttpResponse<String> spare =
                say(laptop, "/attempt/take-motor", Map.of("motor", motor("B2"), "seenMotor", motor));
        assertEquals(200, spare.statusCode(), spare.body());
        says("winding, 2nd", spare.body());
    }

    /** The card alone: the list of entries beneath is about others too. */
    private static String section(String part) {
        int end = part.indexOf("class=\"entries\"");
        return end < 0 ? part : part.substring(0, end);
    }

    @Test
    void abandoned_while_wound_it_is_run_back_on_every_page_until_somebody_says_the_turns() throws Exception {
        String wind = begin();
        tap(wind, "stopped");
        laptop.form("/attempt/give-up", Map.of("attempt", attempt, "reason", "the window is over"));
        for (String address : PAGES) {
            says("Run it back: how many turns are on?", reader.get(address).body());
        }
        HttpResponse<String> none = say(reader, "/attempt/run-back", Map.of("turns", ""));
        assertEquals(422, none.statusCode());
        says("Say how many crank turns were on; 0 where none were", none.body());
        says(
                "a number from 0 to 10000",
                say(reader, "/attempt/run-back", Map.of("turns", "lots")).body());
        assertEquals(
                200, say(reader, "/attempt/run-back", Map.of("turns", "200")).statusCode());
        for (String address : PAGES) {
            saysNot("Run it back: how many", laptop.get(address).body());
        }
        String bench = laptop.get("/bench/motor/" + motor).body();
        says("run back", bench);
        says(
                "abandoned",
                laptop.get("/results").body()
                        + laptop.get("/attempt/" + attempt).body());
    }

    @Test
    void few_turns_are_no_use_and_leave_the_motor_as_it_was() throws Exception {
        String before = laptop.get("/bench/motor/" + motor).body();
        String wind = begin();
        tap(wind, "stopped");
        say(reader, "/attempt/run-back", Map.of("turns", "20"));
        String after = laptop.get("/bench/motor/" + motor).body();
        assertEquals(uses(before), uses(after));
        assertEquals(state(before), state(after));
        CalledForTests.lookAgain(reader, attempt);
        String again = begin();
        tap(again, "stopped");
        says("winding, 2nd", laptop.get("/now").body());
        say(reader, "/attempt/run-back", Map.of("turns", "200"));
        assertEquals("run back", state(laptop.get("/bench/motor/" + motor).body()));
    }

    private static String uses(String page) {
        return CalledForTests.value(page, "(not used yet|used \\d+ times?)");
    }

    private static String state(String page) {
        return CalledForTests.value(page, "class=\"state[^\"]*\">([^<]+)<");
    }

    @Test
    void what_the_captain_says_moves_the_readers_keys_and_the_other_way() throws Exception {
        String wind = begin();
        says("class=\"now\" aria-current=\"step\">winding<", laptop.get("/now").body());
        assertEquals(200, move("holding").statusCode());
        says("data-phase-now=\"stopped\"", reader.get("/winding/part").body());
        says(
                "class=\"now\" aria-current=\"step\">holding<",
                reader.get("/winding/part").body());
        tap(wind, "again");
        says("class=\"now\" aria-current=\"step\">winding<", laptop.get("/now").body());
        tap(wind, "stopped");
        says("class=\"now\" aria-current=\"step\">holding<", laptop.get("/now").body());
    }

    @Test
    void of_two_at_once_one_wins_and_the_other_hears_who_did_what() throws Exception {
        Visitor other = Demo.joined(app, "captain", "", 93);
        begin();
        assertEquals(200, move("holding").statusCode());
        HttpResponse<String> second =
                other.form("/attempt/move", Map.of("attempt", attempt, "to", "holding", "seen", "winding 0 0"));
        assertEquals(409, second.statusCode());
        says("The laptop said 'Wound' at ", second.body());
        HttpResponse<String> blind = other.form("/attempt/move", Map.of("attempt", attempt, "to", "winding"));
        assertEquals(409, blind.statusCode());
        says("This attempt is holding. What can be done now: Released", blind.body());
    }
}
