package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
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
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** One motor is in one hand: what is wound, just flown or another's is neither offered nor taken. */
@Timeout(120)
class LiveMotorsWebTest {
    private static final String RUN_BACK = "Run it back: how many turns are on?";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private Visitor reader;
    private FilledForms forms;
    private String attempt;
    private String motor;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 96);
        reader = Demo.joined(app, "timekeeper", "", 97);
        forms = new FilledForms(laptop);
        motor = id("motors", "A3");
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String id(String kind, String name) throws Exception {
        return forms.row(kind, name).replaceFirst(".*/", "");
    }

    private void call() throws Exception {
        HttpResponse<String> called =
                laptop.form("/attempt/call", Map.of("entry", id("entries", "Curlew"), "motor", motor));
        assertEquals(200, called.statusCode(), called.body());
        attempt = CalledForTests.value(called.body(), "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
    }

    private HttpResponse<String> callWith(String entry, String tag) throws Exception {
        return laptop.form("/attempt/call", Map.of("entry", id("entries", entry), "motor", id("motors", tag)));
    }

    private void done(Visitor who, String address, String... more) throws Exception {
        Map<String, String> form = new HashMap<>(Map.of("attempt", attempt, "motor", motor));
        for (int i = 0; i < more.length; i += 2) {
            form.put(more[i], more[i + 1]);
        }
        HttpResponse<String> answer = who.form(address, form);
        assertEquals(200, answer.statusCode(), address + " " + answer.body());
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    private void bench(String deed) throws Exception {
        JsonNode answer = laptop.tap(
                "bench.step", content().put("motor", motor).put("deed", deed).put("reason", "the window opens"));
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    private String begin() throws Exception {
        String id = reader.newId();
        JsonNode answer =
                reader.tapAs(id, "wind.begin", content().put("attempt", attempt).put("motor", motor));
        assertEquals("saved", answer.path("state").asText(), answer.toString());
        return id + "-0";
    }

    private void tap(String wind, String phase, int elapsedMs) throws Exception {
        ObjectNode tap = content().put("wind", wind).put("phase", phase).put("elapsedMs", elapsedMs);
        assertEquals("saved", reader.tap("wind.phase", tap).path("state").asText());
    }

    private String motorState() throws Exception {
        return CalledForTests.value(laptop.get("/bench/motor/" + motor).body(), "class=\"state[^\"]*\">([^<]+)<");
    }

    private static void says(String words, String html) {
        assertTrue(html.contains(words), words + " in " + html);
    }

    @Test
    void one_that_another_attempt_has_in_hand_is_refused_with_the_attempt_that_has_it() throws Exception {
        call();
        HttpResponse<String> answer = callWith("Avocet", "A3");
        assertEquals(422, answer.statusCode(), answer.body());
        says("A3 is in the hands of Curlew&#39;s attempt 1", answer.body().replace("'", "&#39;"));
        assertEquals(200, callWith("Avocet", "B5").statusCode());
        String other = laptop.form(
                        "/attempt/take-motor",
                        Map.of("attempt", attempt, "motor", id("motors", "B5"), "seenMotor", motor))
                .body();
        says("B5 is in the hands of Avocet", other);
    }

    @Test
    void one_that_has_just_flown_is_neither_offered_nor_called_with() throws Exception {
        call();
        for (String to : new String[] {"winding", "holding", "released", "landed"}) {
            done(laptop, "/attempt/move", "to", to);
        }
        done(laptop, "/attempt/give-up", "reason", "the wrong model", "again", "yes");
        HttpResponse<String> answer = callWith("Curlew", "A3");
        assertEquals(422, answer.statusCode(), answer.body());
        says("A3 is flown: run it back first", answer.body());
        String now = laptop.get("/now").body();
        assertFalse(now.contains("value=\"" + motor + "\""), now);
    }

    @Test
    void a_call_from_the_list_brings_model_and_motor_and_another_motor_can_be_taken_until_winding_begins()
            throws Exception {
        String card = laptop.get("/now").body();
        motor = CalledForTests.value(card, "(?s)name=\"motor\".*?<option value=\"([^\"]+)\"");
        int key = card.indexOf("aria-label=\"Call Curlew\"");
        String list = card.substring(card.lastIndexOf("<form", key), key);
        says("name=\"assigned\" value=\"yes\"", list);
        String called = laptop.form(
                        "/attempt/call", Map.of("entry", id("entries", "Curlew"), "number", "1", "assigned", "yes"))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        says("name=\"seenMotor\" value=\"" + motor + "\"", called);
        says("Another motor", called);
        String other = CalledForTests.value(
                called, "name=\"motor\" value=\"([^\"]+)\"><input type=\"hidden\" name=\"seenMotor\"");
        done(laptop, "/attempt/take-motor", "motor", other, "seenMotor", motor);
    }

    @Test
    void other_teams_attempts_have_no_motor_that_could_break_or_be_run_back() throws Exception {
        String called = laptop.form("/attempt/call", Map.of("entry", id("entries", "Plover")))
                .body();
        attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        String now = laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding"))
                .body();
        says(">Released</button>", now);
        assertFalse(now.contains("/attempt/broke\"") || now.contains("Run it back"), now);
    }

    @Test
    void a_motor_that_was_wound_on_the_bench_is_not_forgotten_when_its_attempt_is_given_up() throws Exception {
        call();
        bench("lubricate");
        bench("wind");
        done(laptop, "/attempt/give-up", "reason", "the window is over");
        says(RUN_BACK, reader.get("/first").body());
    }

    @Test
    void one_on_the_model_is_no_longer_live_after_it_was_run_back_with_few_turns() throws Exception {
        call();
        tap(begin(), "stopped", 60_000);
        bench("load");
        assertEquals("on the model", motorState());
        done(reader, "/attempt/run-back", "turns", "20");
        assertEquals("run back", motorState());
    }

    @Test
    void a_late_tap_of_a_wind_that_was_run_back_is_kept_and_moves_nothing() throws Exception {
        call();
        String early = begin();
        done(reader, "/attempt/run-back", "turns", "20");
        CalledForTests.lookAgain(reader, attempt);
        String wind = begin();
        tap(early, "stopped", 50_000);
        says("winding, 2nd", laptop.get("/now").body());
        tap(early, "broke", 55_000);
        assertEquals("", reader.get("/first").body().strip());
        tap(wind, "stopped", 60_000);
        says("class=\"now\" aria-current=\"step\">holding<", laptop.get("/now").body());
    }

    @Test
    void the_captain_without_a_reader_puts_more_turns_on_and_with_one_moves_the_readers_keys() throws Exception {
        call();
        done(laptop, "/attempt/move", "to", "winding");
        done(laptop, "/attempt/move", "to", "holding");
        done(laptop, "/attempt/more-turns");
        says("class=\"now\" aria-current=\"step\">winding<", laptop.get("/now").body());
        done(laptop, "/attempt/move", "to", "holding");
        done(reader, "/attempt/run-back", "turns", "20");
        CalledForTests.lookAgain(reader, attempt);
        tap(begin(), "stopped", 60_000);
        done(laptop, "/attempt/more-turns");
        says("data-phase-now=\"winding\"", reader.get("/winding/part").body());
    }

    @Test
    void nobody_goes_to_another_event_while_a_motor_still_has_turns_on() throws Exception {
        String today = id("events", "Saltmarsh Rotor Day");
        forms.add("events", EventAtHandWebTest.LATER);
        String later = id("events", "Winter Reed Cup");
        assertEquals(200, laptop.form("/event/use", Map.of("event", today)).statusCode());
        call();
        begin();
        done(laptop, "/attempt/give-up", "reason", "the window is over");
        HttpResponse<String> answer = laptop.form("/event/use", Map.of("event", later));
        assertEquals(422, answer.statusCode(), answer.body());
        says("still has turns on", answer.body());
        done(reader, "/attempt/run-back", "turns", "20");
        assertEquals(200, laptop.form("/event/use", Map.of("event", later)).statusCode());
    }
}
