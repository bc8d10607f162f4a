package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Nobody measures a break in the air, and a break that was none is taken back whenever somebody finds it, with a reason. */
@Timeout(300)
class MistakenBreakWebTest {
    private static final String WHY = "it was a rib that cracked";

    @TempDir
    static Path root;

    private static App app;
    private static Visitor laptop;

    @BeforeAll
    static void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 940);
    }

    @AfterAll
    static void stop() throws Exception {
        app.close();
    }

    private static String id(String kind, String name) throws Exception {
        return new FilledForms(laptop).row(kind, name).replaceFirst(".*/", "");
    }

    private static String called(String entry, String motor) throws Exception {
        String act = laptop.newId();
        said(200, "/attempt/call", "act", act, "entry", id("entries", entry), "motor", motor);
        CalledForTests.letWind(laptop, act + "-0");
        return act + "-0";
    }

    private static String said(int status, String address, String... fields) throws Exception {
        Map<String, String> form = new java.util.HashMap<>();
        for (int i = 0; i < fields.length; i += 2) {
            form.put(fields[i], fields[i + 1]);
        }
        var answer = laptop.form(address, form);
        assertEquals(status, answer.statusCode(), address + " " + answer.body());
        return answer.body();
    }

    private static void move(String attempt, String to) throws Exception {
        said(200, "/attempt/move", "attempt", attempt, "to", to);
    }

    private static void tap(String id, String kind, ObjectNode content) throws Exception {
        JsonNode answer = laptop.tapAs(id, kind, content);
        assertEquals("saved", answer.path("state").asText(), answer.toString());
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    /** Read at the meter up to the third mark, stopped and counted. @return the wind's id */
    private static String wound(String attempt, String motor) throws Exception {
        String wind = laptop.newId();
        tap(wind, "wind.begin", content().put("attempt", attempt).put("motor", motor));
        for (int level = 1; level <= 3; level++) {
            tap(
                    laptop.newId(),
                    "wind.mark",
                    content().put("wind", wind + "-0").put("step", 1).put("elapsedMs", level * 10_000));
        }
        tap(
                laptop.newId(),
                "wind.phase",
                content().put("wind", wind + "-0").put("phase", "stopped").put("elapsedMs", 60_000));
        return wind + "-0";
    }

    private static String page(String motor) throws Exception {
        return laptop.get("/bench/motor/" + motor).body();
    }

    private static String state(String motor) throws Exception {
        return value(page(motor), "class=\"state[^\"]*\">([^<]+)<");
    }

    private static String step(String page) {
        return value(page, "name=\"break\" value=\"([^\"]+)\"");
    }

    private static void says(String words, String html) {
        assertTrue(html.contains(words), words + " in " + html);
    }

    private static void saysNot(String words, String html) {
        assertFalse(html.contains(words), words + " in " + html);
    }

    @Test
    void in_the_air_nobody_measured_it_and_it_is_taken_back_aloft_after_landing_and_after_closing() throws Exception {
        String motor = id("motors", "C1");
        String attempt = called("Curlew", motor);
        String before = laptop.get("/evening").body();
        wound(attempt, motor);
        move(attempt, "released");
        String flown = state(motor);
        said(200, "/attempt/broke", "attempt", attempt);
        String broke = page(motor);
        says("broken (in the air)", broke);
        says("At turns that nobody counted", broke);
        saysNot("in-ozf", broke.substring(broke.indexOf("How it broke")));
        String winding = laptop.get("/winding/part?flight=" + attempt).body();
        saysNot("just before it broke", winding);
        saysNot("were on when it broke", winding);

        String step = step(broke);
        says("/attempt/not-broken\"", laptop.get("/now?attempt=" + attempt).body());
        String notWhy = said(422, "/bench/motor/" + motor + "/not-broken", "break", step, "mistake", " ");
        says("it stays in the record", notWhy);
        assertEquals("broken", state(motor));
        said(200, "/attempt/not-broken-after-all", "motor", motor, "break", step, "mistake", WHY);
        assertEquals(flown, state(motor));
        says("It did not break (" + WHY + ")", page(motor));
        saysNot("How it broke", page(motor));
        said(200, "/attempt/not-broken-after-all", "motor", motor, "break", step, "mistake", WHY); // twice is once

        said(200, "/attempt/broke", "attempt", attempt);
        move(attempt, "landed");
        String now = laptop.get("/now?attempt=" + attempt).body();
        says("/attempt/not-broken-after-all", now);
        said(409, "/attempt/not-broken-after-all", "motor", motor, "break", step + "x", "mistake", WHY);
        said(200, "/attempt/not-broken-after-all", "motor", motor, "break", step(now), "mistake", WHY);
        assertEquals(flown, state(motor));
        says("there is no break to take back", said(422, "/bench/motor/" + motor + "/not-broken", "mistake", WHY));

        said(200, "/attempt/take-back", "attempt", attempt);
        said(200, "/attempt/broke", "attempt", attempt);
        move(attempt, "landed");
        said(200, "/attempt/type-time", "attempt", attempt, "typed-slot", "1", "typed", "0:01");
        said(200, "/attempt/close", "attempt", attempt, "why", "one watch only");
        assertEquals("broken", state(motor));
        String asked = laptop.get("/evening").body();
        says("Motor C1 broke", asked);
        says("Undecided: its motor broke in the air", asked);
        String form = asked.substring(asked.indexOf("Motor C1 broke"));
        String of = step(form);
        said(422, "/evening/not-broken", "motor", motor, "break", of, "mistake", "");
        says("Motor C1 broke", laptop.get("/evening").body());
        said(200, "/evening/not-broken", "motor", motor, "break", of, "mistake", WHY);
        saysNot("Motor C1 broke", laptop.get("/evening").body());
        saysNot("Motor C1 broke", before);
        saysNot("its motor broke in the air", laptop.get("/evening").body());
        assertEquals(flown, state(motor));
    }

    @Test
    void at_the_meter_the_wind_is_whole_again_and_no_risk_counts_it_long_after_the_undo() throws Exception {
        String motor = id("motors", "A3");
        String batch = value(page(motor), "/bench/break-test/([^\"]+)\"");
        String attempt = called("Avocet", motor);
        String wind = wound(attempt, motor);
        said(200, "/attempt/broke", "attempt", attempt);
        said(200, "/attempt/people-safe", "attempt", attempt, "motor", motor);
        said(200, "/attempt/parted", "attempt", attempt, "motor", motor, "place", "strand");
        says(
                "/bench/motor/" + motor + "\"",
                laptop.get("/bench/break-test/" + batch).body());
        said(200, "/bench/motor/" + motor + "/not-broken", "break", step(page(motor)), "mistake", WHY);
        assertEquals("wound", state(motor));
        saysNot("How it broke", page(motor));
        String found = laptop.get("/bench/break-test/" + batch).body();
        saysNot("accident", found);
        said(200, "/attempt/give-up", "attempt", attempt, "reason", "the window is over");
        said(200, "/attempt/run-back", "attempt", attempt, "motor", motor, "turns", "100");
        assertFalse(wind.isEmpty());
    }

    /** Wound by the captain's keys alone: whoever reads is told what happened, and can say what the counter shows. */
    @Test
    void the_turns_of_a_break_that_nobody_read_are_told_on_winding() throws Exception {
        String motor = id("motors", "C2");
        String attempt = called("Curlew", motor);
        move(attempt, "winding");
        said(200, "/attempt/broke", "attempt", attempt);
        said(200, "/attempt/people-safe", "attempt", attempt, "motor", motor);
        said(200, "/attempt/parted", "attempt", attempt, "motor", motor, "place", "strand");
        String winding = laptop.get("/winding/part?flight=" + attempt).body();
        saysNot("so it cannot become", winding);
        says("C2 broke. For this attempt another motor is taken.", winding);
        says("Nobody read this wind", winding);
        String step = step(winding);
        says("whole number", broke(422, attempt, motor, step, "many"));
        says("such a motor breaks at about", broke(422, attempt, motor, step, "9000"));
        saysNot("Nobody read this wind", broke(200, attempt, motor, step, "150"));
        says("At 1500 motor turns", page(motor));
        said(200, "/attempt/give-up", "attempt", attempt, "reason", "the window is over");
    }

    private static String broke(int status, String attempt, String motor, String step, String turns) throws Exception {
        return said(
                status,
                "/winding/broke-at",
                "attempt",
                attempt,
                "flight",
                attempt,
                "motor",
                motor,
                "break",
                step,
                "broke-at",
                turns);
    }
}
