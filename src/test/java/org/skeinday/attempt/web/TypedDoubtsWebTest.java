package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.LocalDateTime;
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
import org.skeinday.review.web.FlownSeason;

/** Unlikely values are asked about where they are typed; insisted upon, they are kept, marked and in no fit. */
@Timeout(90)
class TypedDoubtsWebTest {
    private static final String UNUSUAL = "Ten times more than usual: this model flies about";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private FilledForms forms;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 41);
        forms = new FilledForms(laptop);
        FlownSeason.into(app, 20, LocalDateTime.now().minusHours(2), 6);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    /** Curlew's attempt with motor A3, in the air. */
    private String released() throws Exception {
        String now = laptop.get("/now").body();
        String entry = CalledForTests.value(now, "name=\"entry\" value=\"([^\"]+)\"");
        String motor = forms.row("motors", "A3").replaceFirst(".*/", "");
        String model = CalledForTests.value(now, "name=\"model\" value=\"([^\"]+)\"");
        String called = laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor, "model", model))
                .body();
        String attempt = CalledForTests.value(called, "name=\"attempt\" value=\"([^\"]+)\"");
        CalledForTests.letWind(laptop, attempt);
        assertEquals(
                200,
                laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "released", "seen", ""))
                        .statusCode());
        return attempt;
    }

    /** Asked, then insisted upon. */
    private String insisted(String address, Map<String, String> fields, String words) throws Exception {
        HttpResponse<String> asked = laptop.form(address, fields);
        assertEquals(422, asked.statusCode(), asked.body());
        assertTrue(asked.body().contains(words), asked.body());
        Map<String, String> again = new HashMap<>(fields);
        again.put("insist", CalledForTests.value(asked.body(), "name=\"insist\" value=\"([^\"]+)\""));
        HttpResponse<String> taken = laptop.form(address, again);
        assertEquals(200, taken.statusCode(), taken.body());
        return taken.body();
    }

    private void doubtedOnEvening(String words) throws Exception {
        String evening = laptop.get("/evening").body();
        assertTrue(evening.contains("to be confirmed") && evening.contains(words), evening);
    }

    @Test
    void a_time_that_is_typed_for_a_watch_is_asked_about() throws Exception {
        String attempt = released();
        Map<String, String> typed = Map.of("attempt", attempt, "typed-slot", "1", "typed", "59:00");
        insisted("/attempt/type-time", typed, UNUSUAL);
        doubtedOnEvening("time 59:00: doubted: Ten times more");
        var form = laptop.form("/attempt/type-time", Map.of("attempt", attempt, "typed-slot", "1", "typed", "-3"));
        assertTrue(form.statusCode() == 422 && !form.body().contains("name=\"insist\""), "what is no time is refused");
    }

    @Test
    void a_time_that_officials_announced_is_asked_about() throws Exception {
        assertEquals(
                204,
                forms.save("events", forms.row("events", "Saltmarsh Rotor Day"), Map.of("kind", "visiting"))
                        .statusCode());
        String attempt = released();
        String noted = insisted("/attempt/announce", Map.of("attempt", attempt, "announced", "59:00"), UNUSUAL);
        assertTrue(noted.contains("59:00"), noted);
        laptop.form("/attempt/announce", Map.of("attempt", attempt, "announced", "1:00"));
    }

    @Test
    void turns_left_that_a_list_asks_for_are_asked_about_and_no_more_refused() throws Exception {
        String entry =
                CalledForTests.value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        Map<String, String> card = new HashMap<>(Map.of("entry", entry, "attempt", "1", "model", "Reed One"));
        card.putAll(Map.of("motor", "A3", "stop-count", "210", "back-off", "3", "watch-1", "1:48", "watch-2", "1:48"));
        assertEquals(200, laptop.form("/key-in", card).statusCode());
        String flight = CalledForTests.value(laptop.get("/winding").body(), "/winding\\?flight=([^\"]+)\"");
        ObjectNode item = content().put("list", "after-landing").put("subject", flight);
        item.put("revision", 1).put("step", "remaining").put("answer", "330");
        JsonNode asked = laptop.tap("step.tick", item);
        assertEquals("refused", asked.path("state").asText(), asked.toString());
        assertTrue(
                asked.path("reason").asText().contains("More turns are left than it was launched with: 330 of 207"),
                asked.toString());
        JsonNode kept = laptop.tap("step.tick", item.deepCopy().put("insist", "more-left-than-wound"));
        assertEquals("saved", kept.path("state").asText(), kept.toString());
        doubtedOnEvening("turns remaining 330: doubted: More turns are left");
        String winding = laptop.get("/winding?flight=" + flight).body();
        assertTrue(winding.contains("440 motor turns") || !winding.contains("many left"), winding);
        JsonNode negative = laptop.tap("step.tick", item.deepCopy().put("answer", "-4"));
        assertEquals("refused", negative.path("state").asText(), negative.toString());
    }

    @Test
    void a_break_that_is_told_on_the_bench_is_asked_about_and_gives_no_k_until_the_coach_confirms_it()
            throws Exception {
        String b1 = forms.row("motors", "B1").replaceFirst(".*/", "");
        for (String deed : new String[] {"lubricate", "unwind"}) {
            laptop.tap("bench.step", content().put("motor", b1).put("deed", deed));
        }
        ObjectNode broke = content().put("motor", b1).put("deed", "break").put("crankTurns", "900");
        broke.put("torque", "60 mN-m");
        JsonNode asked = laptop.tap("bench.step", broke);
        assertEquals("refused", asked.path("state").asText(), asked.toString());
        assertTrue(
                asked.path("reason").asText().contains("That is 9000 motor turns: such a motor breaks at about"),
                asked.toString());
        assertTrue(asked.path("reason").asText().contains("beyond the torque meter"), asked.toString());
        JsonNode kept =
                laptop.tap("bench.step", broke.deepCopy().put("insist", "turns-beyond-breaking peak-off-the-meter"));
        assertEquals("saved", kept.path("state").asText(), kept.toString());
        String evening = laptop.get("/evening").body();
        assertTrue(evening.contains("1 break waits for the coach"), evening);
        String form = evening.substring(evening.indexOf("/evening/break"));
        Map<String, String> word = new HashMap<>(Map.of("motor", b1));
        word.put("seen", CalledForTests.value(form, "name=\"seen\" value=\"([^\"]*)\""));
        word.put("cause", "test");
        String said = laptop.form("/evening/break", word).body();
        assertTrue(said.contains("1 break waits for the coach"), "its numbers still wait: " + said);
        assertTrue(found(b1).contains(">9000</td><td class=\"number\">–</td>"), "no K: " + found(b1));
        String numbers = said.substring(said.indexOf("/evening/break"));
        word.put("seen", CalledForTests.value(numbers, "name=\"seen\" value=\"([^\"]*)\""));
        word.put("so", "yes");
        String so = laptop.form("/evening/break", word).body();
        assertTrue(so.contains("Saved.") && !so.contains("waits for the coach"), so);
        assertTrue(found(b1).contains(">9000</td><td class=\"number\">140.0</td>"), found(b1));
    }

    private String found(String motor) throws Exception {
        String batch = CalledForTests.value(laptop.get("/bench/motor/" + motor).body(), "/bench/break-test/([^\"]+)\"");
        return laptop.get("/bench/break-test/" + batch).body();
    }
}
