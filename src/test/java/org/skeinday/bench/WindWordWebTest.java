package org.skeinday.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

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

/** Turns of a wind that are unlikely are asked about where they are typed, and one word about a wind answers all of it. */
@Timeout(60)
class WindWordWebTest {
    @TempDir
    Path root;

    private App app;
    private Visitor laptop;
    private String b1;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
        laptop = new Visitor(app.port(), "", 85);
        b1 = new FilledForms(laptop).row("motors", "B1").replaceFirst(".*/", "");
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private static ObjectNode content() {
        return Json.MAPPER.createObjectNode();
    }

    /** @param stop count or breaking @param apart ms between two marks of the needle */
    private String wound(String stop, long apart) throws Exception {
        String id = laptop.newId();
        laptop.tapAs(id, "wind.alone", content().put("motor", b1).put("stop", stop));
        for (int i = 1; i <= 3; i++) {
            laptop.tap(
                    "wind.mark", content().put("wind", id + "-0").put("step", 1).put("elapsedMs", 5000 + i * apart));
        }
        tell(id + "-0", stop.equals("breaking") ? "broke" : "stopped", 30_000);
        tell(id + "-0", "off-meter", 40_000);
        return id + "-0";
    }

    private void tell(String wind, String phase, long ms) throws Exception {
        laptop.tap("wind.phase", content().put("wind", wind).put("phase", phase).put("elapsedMs", ms));
    }

    private HttpResponse<String> count(String wind, String stop, String insist) throws Exception {
        Map<String, String> turns = new HashMap<>(Map.of("wind", wind, "atFull", "", "stop", stop, "backOff", ""));
        turns.put("insist", insist);
        return laptop.form("/winding/motor/" + b1 + "/count", turns);
    }

    private String insisted(String wind, String stop) throws Exception {
        HttpResponse<String> asked = count(wind, stop, "");
        assertEquals(422, asked.statusCode(), asked.body());
        assertTrue(asked.body().contains("such a motor breaks at about"), asked.body());
        String insist = CalledForTests.value(asked.body(), "name=\"insist\" value=\"([^\"]+)\"");
        HttpResponse<String> taken = count(wind, stop, insist);
        assertEquals(200, taken.statusCode(), taken.body());
        return taken.body();
    }

    private HttpResponse<String> word(String address, String page, String verdict, String reason) throws Exception {
        return laptop.form(
                address,
                Map.of(
                        "wind",
                        CalledForTests.value(
                                page, "name=\"wind\" value=\"([^\"]+)\"><input type=\"hidden\" name=\"seen\""),
                        "seen",
                        CalledForTests.value(page, "name=\"seen\" value=\"([^\"]*)\""),
                        "verdict",
                        verdict,
                        "reason",
                        reason));
    }

    private String found() throws Exception {
        String batch = CalledForTests.value(laptop.get("/bench/motor/" + b1).body(), "/bench/break-test/([^\"]+)\"");
        return laptop.get("/bench/break-test/" + batch).body();
    }

    @Test
    void turns_beyond_what_such_a_motor_holds_are_asked_about_and_stay_out_of_k_until_somebody_confirms_them()
            throws Exception {
        String wind = wound("breaking", 5000);
        insisted(wind, "900");
        String asked = found();
        assertTrue(asked.contains(">9000</td>") && asked.contains("such a motor breaks at about"), asked);
        assertFalse(asked.contains("from one motor"), "no K and no torque limit: " + asked);
        assertEquals(422, count(wind, "901", "").statusCode(), "another number is asked about again");
        assertEquals(200, count(wind, "900", "").statusCode(), "the same is not");

        String evening = laptop.get("/evening").body();
        assertTrue(evening.contains("1 wind is asked about"), evening);
        String form = evening.substring(evening.indexOf("Wind of B1") - 400);
        HttpResponse<String> so = word("/evening/wind", form, "so", "");
        assertEquals(200, so.statusCode(), so.body());
        assertFalse(so.body().contains("1 wind is asked about"), so.body());
        assertTrue(found().contains("0.15 in·ozf, from one motor"), found());
        assertEquals(409, word("/evening/wind", form, "left-out", "a slip").statusCode(), "the form stood open");
    }

    @Test
    void a_reading_of_a_practice_wind_that_is_asked_about_is_answered_by_one_act_on_its_page_or_on_evening()
            throws Exception {
        String wind = wound("count", 100);
        assertEquals(200, count(wind, "120", "").statusCode());
        laptop.tap("bench.step", content().put("motor", b1).put("deed", "unwind"));
        String page = laptop.get("/winding/motor/" + b1).body();
        assertTrue(page.contains("Up from mark 0 to mark 2 within 100 ms"), page);
        String address = "/winding/motor/" + b1 + "/judge";
        assertEquals(422, word(address, page, "left-out", " ").statusCode(), "without a reason");
        HttpResponse<String> out = word(address, page, "left-out", "the needle stuck");
        assertTrue(out.body().contains("left out, the needle stuck") && out.statusCode() == 200, out.body());
        assertFalse(laptop.get("/evening").body().contains("asked about"), "nobody is asked again");
        HttpResponse<String> in = word(address, out.body(), "counts", "");
        assertEquals(200, in.statusCode(), in.body());
        assertTrue(laptop.get("/evening").body().contains("1 wind is asked about"));
        assertEquals(200, word(address, in.body(), "so", "").statusCode());
        assertFalse(laptop.get("/winding/motor/" + b1).body().contains("within 100 ms"));
        assertEquals(
                422,
                word(
                                address,
                                in.body()
                                        .replaceAll("name=\"seen\" value=\"[^\"]*\"", "name=\"seen\" value=\"120 0 \""),
                                "so",
                                "")
                        .statusCode());
    }
}
