package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** A motor wound for practice, or until it breaks, is wound at the place that somebody chose, and stays of that place. */
@Timeout(300)
class PracticePlaceWebTest extends TwoPlacesDay {
    private String motor(String tag) throws Exception {
        return new FilledForms(laptop).row("motors", tag).replaceFirst(".*/", "");
    }

    private static String data(String page, String name) {
        return value(page, "data-" + name + "=\"([^\"]*)\"");
    }

    private static ObjectNode wind(String wind) {
        return Json.MAPPER.createObjectNode().put("wind", wind);
    }

    private JsonNode begin(String id, String motor, String station) throws Exception {
        return reader.tapAs(
                id,
                "wind.alone",
                Json.MAPPER
                        .createObjectNode()
                        .put("motor", motor)
                        .put("stop", "breaking")
                        .put("station", station));
    }

    private static int breaking(String page) {
        return Integer.parseInt(value(page, "at about (\\d+) crank turns"));
    }

    @Test
    void the_place_is_chosen_on_the_motors_page_and_the_one_at_work_is_offered() throws Exception {
        String page = "/winding/motor/" + motor("B1") + "?stop=breaking";
        String atWork = laptop.get(page).body();
        assertEquals(place("Spare post"), data(atWork, "station"));
        says("<dt>wound at</dt><dd>" + POST + "<", atWork);
        String link = value(atWork, "href=\"([^\"]+)\">" + TABLE).replace("&amp;", "&");
        String chosen = laptop.get(link).body();
        assertEquals(place("Table by the door"), data(chosen, "station"));
        says("<dt>wound at</dt><dd>" + TABLE + "<", chosen);
        assertEquals("0.020000", data(atWork, "per-mark"));
        assertEquals("0.050000", data(chosen, "per-mark"));
        assertEquals("breaking", data(chosen, "stop"));
        assertEquals(2.0 * breaking(atWork), breaking(chosen), 2, "a winder that turns the hook half as far");
        String part = value(chosen, "data-refetch=\"(/winding/motor[^\"]+)\"").replace("&amp;", "&");
        assertEquals(
                place("Table by the door"), data(laptop.get(part).body(), "station"), "the page refetches the same");
    }

    @Test
    void whoever_chooses_a_place_sees_that_somebody_winds_there_without_an_attempt() throws Exception {
        String there = TABLE + " · Avocet is called there";
        String wound = " · motor B1 is wound there without an attempt";
        String curlewsPage = "/now?attempt=" + curlew.attempt();
        says(there, laptop.get(curlewsPage).body());
        saysNot(wound, laptop.get(curlewsPage).body());
        String id = laptop.newId();
        saved(begin(id, motor("B1"), place("Table by the door")));
        says(there + wound, laptop.get(curlewsPage).body());
        says(there + wound, keys(curlew));
        says(there + wound, laptop.get("/winding/motor/" + motor("B4")).body());
        says(
                POST + " · Curlew is called there",
                laptop.get("/winding/motor/" + motor("B4") + "?place=" + place("Table by the door"))
                        .body());
        saved(reader.tap("wind.phase", wind(id + "-0").put("phase", "broke").put("elapsedMs", 50_000)));
        saysNot(wound, laptop.get(curlewsPage).body());
    }

    @Test
    void a_break_test_stays_of_the_meter_and_the_winder_that_it_was_made_with() throws Exception {
        String b1 = motor("B1");
        JsonNode unknown = begin(laptop.newId(), b1, "nowhere");
        says("no such winding place any more", unknown.path("reason").asText());
        String id = laptop.newId();
        saved(begin(id, b1, place("Table by the door")));
        var forms = new FilledForms(laptop);
        var anew = forms.save(
                "stations",
                forms.row("stations", "Table by the door"),
                Map.of("meter", "dial 9", "division", "0.1 in-ozf", "winder-ratio", "4"));
        assertEquals(204, anew.statusCode(), anew.body());
        for (int i = 1; i <= 4; i++) {
            saved(reader.tap("wind.mark", wind(id + "-0").put("step", 1).put("elapsedMs", 10_000 * i)));
        }
        assertEquals("0.050000", data(reader.get("/winding/motor/" + b1).body(), "per-mark"));
        saved(reader.tap("wind.phase", wind(id + "-0").put("phase", "broke").put("elapsedMs", 50_000)));
        saved(reader.tap("wind.phase", wind(id + "-0").put("phase", "off-meter").put("elapsedMs", 60_000)));
        var counted = laptop.form(
                "/winding/motor/" + b1 + "/count",
                Map.of("wind", id + "-0", "atFull", "", "stop", "200", "backOff", "0"));
        assertEquals(200, counted.statusCode(), counted.body());
        fromTheJournal();
        String batch = laptop.get("/bench/motor/" + b1).body();
        String found = laptop.get("/bench/break-test/" + value(batch, "/bench/break-test/([^\"]+)\""))
                .body();
        says("<td class=\"number\">2000</td>", found);
        says("<td>wire meter 1</td>", found);
        says("0.20 in·ozf", found);
        says("torque at break on dial 2", found);
        says("torque at break on dial 9", found);
    }
}
