package org.skeinday.review.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
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

/** What a correction does to the forecast is said where it is made, on every page where one can be made. */
@Timeout(90)
class CorrectionsSaidWebTest {
    private static final String SAID = "The forecast for Reed One with A changed from ";

    @TempDir
    Path root;

    private App app;
    private Visitor laptop;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 38);
        FlownSeason.into(app, 20, LocalDateTime.now().minusHours(2), 5);
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private HttpResponse<String> landed(String flight, Map<String, String> told) throws Exception {
        Map<String, String> all = new HashMap<>(
                Map.of("attempt", flight, "flight", flight, "remaining", "", "spoilt", "", "contact", ""));
        all.putAll(told);
        return laptop.form("/winding/landed", all);
    }

    private static void says(String words, HttpResponse<String> answer) {
        assertEquals(200, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(words), answer.body());
    }

    @Test
    void a_card_that_is_keyed_in_says_it_beside_saved() throws Exception {
        Map<String, String> times = Map.of("watch-1", "2:10", "watch-2", "2:10");
        var keyed = laptop.form("/key-in", KeyedInFlight.card(laptop, times));
        says("Saved from paper: Curlew, attempt 1. " + SAID, keyed);
        says("(8 flights on any use).", keyed);
    }

    @Test
    void winding_says_it_of_a_flight_that_is_left_out_there_and_its_cautions_stay_above() throws Exception {
        String flight = KeyedInFlight.of(laptop, "", "2:10");
        var noted = landed(flight, Map.of("remaining", "40"));
        assertFalse(noted.body().contains("changed from"), "turns left move no time");
        var out = landed(flight, Map.of("remaining", "40", "spoilt", "touched a wall"));
        says(SAID, out);
        int said = out.body().indexOf(SAID);
        assertTrue(out.body().indexOf("class=\"cautions") < said, "what is to be looked at stands first");
        assertTrue(out.body().indexOf("/winding/landed") < said, "and the form is not pushed down");
    }

    @Test
    void prepare_says_it_once_on_the_list_to_which_a_corrected_flight_goes_back() throws Exception {
        var forms = new FilledForms(laptop);
        // the thirteenth of the season: Reed One with A4
        String row = CalledForTests.value(
                laptop.get("/prepare/flights").body(), "href=\"(/prepare/flights/row/[^\"]+-1000012)\"");
        var saved = forms.save("flights", row, Map.of("id", row.replaceFirst(".*/", ""), "time", "3:20"));
        assertEquals(204, saved.statusCode(), saved.body());
        String list = saved.headers().firstValue("HX-Redirect").orElseThrow();
        says(SAID, laptop.get(list));
        assertFalse(laptop.get(list).body().contains("changed from "), "said once");
    }

    private String broken(String motor) throws Exception {
        String id = laptop.newId();
        laptop.tapAs(
                id,
                "wind.alone",
                Json.MAPPER.createObjectNode().put("motor", motor).put("stop", "breaking"));
        laptop.tap("wind.mark", of(id).put("step", 1).put("elapsedMs", 4_000));
        laptop.tap("wind.phase", of(id).put("phase", "broke").put("elapsedMs", 9_000));
        return id + "-0";
    }

    private static ObjectNode of(String begun) {
        return Json.MAPPER.createObjectNode().put("wind", begun + "-0");
    }

    @Test
    void a_break_says_what_it_does_to_k_limits_and_risk_where_it_is_counted_judged_and_its_motor_corrected()
            throws Exception {
        String row = new FilledForms(laptop).row("motors", "B4");
        String b4 = row.replaceFirst(".*/", "");
        Map<String, String> turns = Map.of("wind", broken(b4), "atFull", "", "stop", "220", "backOff", "");
        var counted = laptop.form("/winding/motor/" + b4 + "/count", turns);
        says("K of batch B changed from ", counted);
        says("Torque at break of batch B on ", counted);
        String bench = laptop.get("/bench/motor/" + b4).body();
        String seen = CalledForTests.value(bench, "name=\"seen\" value=\"([^\"]*)\"");
        var judged = laptop.form("/bench/motor/" + b4 + "/break", Map.of("cause", "accident", "seen", seen));
        says("K of batch B changed from ", judged);
        seen = CalledForTests.value(judged.body(), "name=\"seen\" value=\"([^\"]*)\"");
        says(
                "K of batch B changed from ",
                laptop.form("/evening/break", Map.of("motor", b4, "cause", "test", "seen", seen)));
        var forms = new FilledForms(laptop);
        var saved = forms.save("motors", row, Map.of("id", b4, "mass", "2.2"));
        assertEquals(204, saved.statusCode(), saved.body());
        String list = saved.headers().firstValue("HX-Redirect").orElseThrow();
        says("K of batch B changed from ", laptop.get(list));
    }

    /** A break test of another day, from a file: 2000 motor turns, inside the meter's scale. */
    private void brokenElsewhere() throws Exception {
        String file =
                "tag,batch,team,direction,loop (in),mass (g),broke,break turns,break torque,break meter,break test\n"
                        + "Z1,B,Reedbank Rotors,cw,18.75,1.69,2026-05-02 14:00,2000,6 mN-m,wire meter 1,yes\n";
        var taken = laptop.upload("/import/take", "motors.csv", file.getBytes(StandardCharsets.UTF_8), Map.of());
        assertEquals(200, taken.statusCode(), taken.body());
    }

    /** The list to which a changed row goes back. */
    private HttpResponse<String> changed(String kind, String name, Map<String, String> cells) throws Exception {
        var forms = new FilledForms(laptop);
        var saved = forms.save(kind, forms.row(kind, name), cells);
        assertEquals(204, saved.statusCode(), saved.body());
        return laptop.get(saved.headers().firstValue("HX-Redirect").orElseThrow());
    }

    @Test
    void prepare_says_what_another_k_of_a_batch_and_another_end_of_a_scale_do_to_the_batch() throws Exception {
        brokenElsewhere();
        var scale = changed("stations", "Table by the door", Map.of("full-scale", "0.5 in-ozf"));
        says("Torque at break of batch B on wire meter 1 changed from ", scale);
        assertFalse(scale.body().contains("K of batch B changed"), "no turns rest on a meter");
        var k = changed("batches", "B", Map.of("k", "15"));
        says("K of batch B changed from ", k);
        assertFalse(changed("batches", "C", Map.of("k", "44.6")).body().contains("batch B"), "of that batch alone");
    }

    @Test
    void now_says_it_of_a_time_that_is_typed_anew() throws Exception {
        String entry =
                CalledForTests.value(laptop.get("/key-in").body(), "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        String motor = new FilledForms(laptop).row("motors", "A3").replaceFirst(".*/", "");
        String model = CalledForTests.value(laptop.get("/now").body(), "name=\"model\" value=\"([^\"]+)\"");
        laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor, "model", model));
        String attempt = CalledForTests.letWind(laptop);
        for (String to : new String[] {"released", "landed"}) {
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", to, "seen", ""));
        }
        Map<String, String> typed = new HashMap<>(Map.of("attempt", attempt, "typed-slot", "1", "typed", "1:50"));
        laptop.form("/attempt/type-time", typed);
        typed.put("typed", "2:20");
        says(SAID, laptop.form("/attempt/type-time", typed));
        assertFalse(laptop.get("/now").body().contains(" changed from "), "only to whoever did it");
    }
}
