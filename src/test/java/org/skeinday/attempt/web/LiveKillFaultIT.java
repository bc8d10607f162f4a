package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Demo;
import org.skeinday.Program;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/**
 * The attempts of two entries go through all phases side by side, and between their acts the program's process is killed and
 * started again in the same folder: the phases and all numbers of every attempt so far are those of before.
 */
@Timeout(300)
class LiveKillFaultIT {
    @TempDir
    Path root;

    private Path data;
    private int port;
    private Program program;
    /** Each device makes ids of its own. */
    private long seed = 9_700;

    private Visitor laptop;
    /** By id: entry and attempt, as pages about it are headed. */
    private final Map<String, String> called = new LinkedHashMap<>();

    @Test
    void killed_in_any_phase_it_starts_again_with_the_same_phases_and_the_same_numbers() throws Exception {
        data = Demo.into(root.resolve("day"));
        port = Program.freePort();
        begin();
        try {
            String avocet = throughAStoppedHall();
            toTheEnd(avocet);
        } finally {
            program.close();
        }
    }

    /** @return the attempt whose spare is wound, once the hall goes on */
    private String throughAStoppedHall() throws Exception {
        String curlew = call("Curlew", "C1");
        taken(curlew, "/attempt/move", Map.of("to", "winding"));
        String avocet = call("Avocet", "B5");
        killed(Map.of(curlew, "winding", avocet, "called"));

        taken(curlew, "/attempt/give-up", Map.of("reason", "a rib broke"));
        phase(wind(avocet, "B5"), "broke", 40_000);
        killed(Map.of(curlew, "to be run back", avocet, "broke"));

        assertFirst("Run it back: how many turns are on?");
        taken(curlew, "/attempt/run-back", Map.of("motor", motor("C1"), "turns", "30"));
        Map<String, String> broke = Map.of("motor", motor("B5"), "place", "hook");
        taken(avocet, "/attempt/people-safe", broke);
        taken(avocet, "/attempt/parted", broke);
        taken(avocet, "/attempt/take-motor", Map.of("motor", motor("C3"), "seenMotor", motor("B5")));
        CalledForTests.lookAgain(laptop, avocet);
        wind(avocet, "C3");
        taken(avocet, "/hall/stop", Map.of("stop-reason", "lights", "stop-words", "half of them"));
        killed(Map.of(curlew, "abandoned", avocet, "winding, 2nd"));

        assertFirst("The hall is stopped: lights");
        taken(avocet, "/attempt/run-back", Map.of("motor", motor("C3"), "turns", "60"));
        String stop = CalledForTests.value(laptop.get("/first").body(), "name=\"stop\" value=\"([^\"]+)\"");
        taken(avocet, "/hall/resume", Map.of("stop", stop));
        return avocet;
    }

    private void toTheEnd(String avocet) throws Exception {
        CalledForTests.lookAgain(laptop, avocet);
        phase(wind(avocet, "C3"), "stopped", 50_000);
        String curlew = call("Curlew", "A3");
        flown(curlew);
        taken(curlew, "/attempt/aloft", Map.of("to", "caught"));
        killed(Map.of(curlew, "in the air", avocet, "holding"));

        taken(curlew, "/attempt/aloft", Map.of("to", "still-held"));
        taken(avocet, "/attempt/move", Map.of("to", "released"));
        taken(avocet, "/attempt/move", Map.of("to", "landed"));
        typed(avocet, "");
        taken(avocet, "/attempt/close", Map.of("why", "both asked"));
        killed(Map.of(curlew, "landed", avocet, "provisional"));

        taken(curlew, "/attempt/give-up", Map.of("reason", "a ball"));
        signed(avocet);
        killed(Map.of(curlew, "void", avocet, "signed"));
    }

    private void flown(String attempt) throws Exception {
        for (String to : List.of("winding", "holding", "released")) {
            taken(attempt, "/attempt/move", Map.of("to", to));
        }
    }

    private void typed(String attempt, String at) throws Exception {
        for (String slot : List.of("1", "2")) {
            taken(attempt, "/attempt/type-time", Map.of("typed-slot", slot, "typed", "0:40.4" + slot, "typed-at", at));
        }
    }

    private void signed(String attempt) throws Exception {
        String seen = CalledForTests.value(laptop.get("/attempt/" + attempt).body(), "name=\"seen\" value=\"(\\d+)\"");
        for (String as : List.of("captain", "watch-1", "watch-2")) {
            taken(attempt, "/attempt/" + attempt + "/sign", Map.of("as", as, "seen", seen, "pin", Demo.PIN));
        }
    }

    private void begin() throws Exception {
        program = Program.serve(data, port);
        laptop = new Visitor(port, "", ++seed);
    }

    /** @return id of the attempt */
    private String call(String entry, String tag) throws Exception {
        String id = CalledForTests.value(
                laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>" + entry + "</option>");
        HttpResponse<String> answer = laptop.form("/attempt/call", Map.of("entry", id, "motor", motor(tag)));
        assertEquals(200, answer.statusCode(), answer.body());
        String day = laptop.get("/day/part").body();
        String attempt = CalledForTests.value(day, "href=\"/attempt/([^\"]+)\">" + entry + ", ");
        called.put(attempt, CalledForTests.value(day, "href=\"/attempt/" + attempt + "\">([^<]+)<"));
        CalledForTests.letWind(laptop, attempt);
        return attempt;
    }

    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    /** @return id of the wind */
    private String wind(String attempt, String tag) throws Exception {
        String id = laptop.newId();
        ObjectNode content =
                Json.MAPPER.createObjectNode().put("attempt", attempt).put("motor", motor(tag));
        assertEquals(
                "saved", laptop.tapAs(id, "wind.begin", content).path("state").asText());
        return id + "-0";
    }

    private void phase(String wind, String phase, long ms) throws Exception {
        ObjectNode content = Json.MAPPER
                .createObjectNode()
                .put("wind", wind)
                .put("phase", phase)
                .put("elapsedMs", ms);
        assertEquals("saved", laptop.tap("wind.phase", content).path("state").asText());
    }

    private void taken(String attempt, String address, Map<String, String> more) throws Exception {
        Map<String, String> all = new HashMap<>(Map.of("attempt", attempt));
        all.putAll(more);
        HttpResponse<String> answer = laptop.form(address, all);
        assertEquals(200, answer.statusCode(), address + " " + answer.body());
    }

    private void assertFirst(String words) throws Exception {
        String first = laptop.get("/first").body();
        assertTrue(first.contains(words), words + " in " + first);
    }

    /** What the pages say of each attempt, and after a kill again. @param phases in which two of them are, by id */
    private void killed(Map<String, String> phases) throws Exception {
        Map<String, Map<String, Map<String, String>>> before = figures();
        for (Map.Entry<String, String> one : phases.entrySet()) {
            Map<String, String> said = before.get(one.getKey()).get("phase");
            assertEquals(
                    List.of(one.getValue()), said.values().stream().distinct().toList(), said.toString());
        }
        program.kill();
        begin();
        assertEquals(before, figures(), "killed while " + phases.values());
    }

    private Map<String, Map<String, Map<String, String>>> figures() throws Exception {
        var pages = new ReadOnce(laptop);
        Map<String, Map<String, Map<String, String>>> figures = new TreeMap<>();
        for (Map.Entry<String, String> one : called.entrySet()) {
            figures.put(
                    one.getKey(),
                    LiveFigures.of(pages, one.getKey(), one.getValue()).all());
        }
        return figures;
    }
}
