package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.fault.CalledForTests;
import org.skeinday.prepare.FilledForms;

/** Two attempts at two winding places at once: each is read on its own meter and counted by its own winder, on every page. */
@Timeout(300)
class TwoPlacesWebTest extends TwoPlacesDay {
    /** Now, Winding and the attempt's own page name the place, and no page says of anything what another does not. */
    private LiveFigures figures(Side side, String place) throws Exception {
        LiveFigures figures = LiveFigures.of(laptop, side.attempt(), side.title());
        assertEquals(Map.of(), figures.different(), figures.toString());
        assertEquals(place, figures.said("wound at", "now"), figures.toString());
        assertEquals(3, figures.pagesWith("wound at"), figures.toString());
        return figures;
    }

    private static String data(String keys, String name) {
        return value(keys, "data-" + name + "=\"([^\"]*)\"");
    }

    /** Limits in divisions of the meter that is read there, what one is worth, and crank turns of the winder. */
    private void reads(Side side, List<String> divisions, double perMark, LiveFigures figures) throws Exception {
        String keys = keys(side);
        assertEquals(divisions, List.of(data(keys, "ceiling"), data(keys, "wanted"), data(keys, "meter-ends")));
        assertEquals(perMark, Double.parseDouble(data(keys, "per-mark")), 1e-4);
        assertEquals(data(keys, "target") + " crank turns", figures.said("turns limit", "now"));
        assertEquals(data(keys, "at-full"), figures.said("full stretch", "now"));
    }

    private static int turns(LiveFigures figures) {
        return Integer.parseInt(figures.said("turns limit", "now").replace(" crank turns", ""));
    }

    @Test
    void each_is_wound_at_the_free_place_on_its_own_meter_by_its_own_winder() throws Exception {
        saved(choose(avocet, "Spare post"));
        int byPost = turns(figures(avocet, POST));
        saved(choose(avocet, "Table by the door"));
        CalledForTests.letWind(laptop, avocet.attempt());
        String one = begin(curlew);
        String beside = laptop.get("/now?attempt=" + avocet.attempt()).body();
        assertFalse(beside.contains("Winding waits for"), "what was checked there stays checked: " + beside);
        LiveFigures atPost = figures(curlew, POST);
        reads(curlew, List.of("15", "10", "25"), 0.02, atPost);
        LiveFigures atTable = figures(avocet, TABLE);
        assertEquals(2.0 * byPost, turns(atTable), 2, "a winder that turns the hook half as far");
        String card = laptop.get("/now?attempt=" + avocet.attempt()).body();
        assertTrue(card.contains("hook turns against it") && !card.contains("hook turns with it"), card);
        String checks = laptop.get("/checks?list=before-winding&subject=" + avocet.attempt())
                .body();
        assertTrue(checks.contains(">10 to 1<") && !checks.contains(">20 to 1<"), checks);
        String two = begin(avocet);
        reads(avocet, List.of("6", "4", "20"), 0.05, atTable);
        reads(curlew, List.of("15", "10", "25"), 0.02, atPost);
        stopped(one);
        stopped(two);
        startAgain();
        assertEquals(turns(atTable), turns(figures(avocet, TABLE)));
        assertEquals(turns(atPost), turns(figures(curlew, POST)));
        counted(one, curlew, "2000 motor turns");
        counted(two, avocet, "1000 motor turns");
    }

    /** Crank turns are those of the winder that it was wound with. */
    private void counted(String wind, Side side, String motorTurns) throws Exception {
        var released = laptop.form("/attempt/move", Map.of("attempt", side.attempt(), "to", "released"));
        assertEquals(200, released.statusCode(), released.body());
        laptop.form("/winding/count", Map.of("wind", wind, "atFull", "60", "stop", "100", "backOff", "0"));
        String told = laptop.get("/winding/part?flight=" + side.attempt()).body();
        assertTrue(told.contains(motorTurns), told);
    }

    private void startAgain() throws Exception {
        Map<String, Map<String, String>> before = figures(curlew, POST).all();
        Map<String, Map<String, String>> beside = figures(avocet, TABLE).all();
        fromTheJournal();
        assertEquals(before, figures(curlew, POST).all());
        assertEquals(beside, figures(avocet, TABLE).all());
    }

    @Test
    void the_place_is_chosen_before_the_first_crank_turn_and_stays_for_the_next_attempt() throws Exception {
        String offered =
                keys(curlew) + laptop.get("/now?attempt=" + curlew.attempt()).body();
        assertEquals(3, offered.split("Another winding place", -1).length, offered);
        saved(choose(curlew, "Table by the door"));
        figures(curlew, TABLE);
        figures(avocet, TABLE); // as it was called: what is chosen for one moves nobody else
        saved(choose(avocet, "Spare post"));
        CalledForTests.letWind(laptop, curlew.attempt());
        saved(choose(curlew, "Spare post"));
        assertTrue(
                laptop.get("/now?attempt=" + curlew.attempt()).body().contains("Winding waits for"),
                "another counter, another mount");
        saved(choose(curlew, "Table by the door"));
        String wind = begin(curlew);
        assertTrue(keys(avocet).contains(TABLE + " · Curlew is there"), keys(avocet));
        JsonNode late = choose(curlew, "Spare post");
        assertEquals("refused", late.path("state").asText(), late.toString());
        assertTrue(late.path("reason").asText().contains("before the first crank turn"), late.toString());
        figures(curlew, TABLE);
        stopped(wind);
        for (String to : List.of("released", "landed")) {
            laptop.form("/attempt/move", Map.of("attempt", curlew.attempt(), "to", to));
        }
        laptop.form("/attempt/close", Map.of("attempt", curlew.attempt(), "why", "no watch"));
        laptop.form("/attempt/give-up", Map.of("attempt", curlew.attempt(), "reason", "no watch ran"));
        assertEquals(
                TABLE,
                LiveFigures.of(laptop, curlew.attempt(), curlew.title()).said("wound at", "record"),
                "its own page keeps it");
        String id = new FilledForms(laptop).row("entries", "Curlew").replaceFirst(".*/", "");
        String paper = laptop.get("/cards").body();
        assertEquals(TABLE, value(paper, "(?s)Curlew, attempt 2 .*?<dt>Wound at</dt><dd>([^<]+)</dd>"));
        String next = laptop.form("/attempt/call", Map.of("entry", id, "number", "2", "assigned", "yes"))
                .body();
        assertTrue(next.contains(TABLE), next);
    }

    /** A page that was not exchanged yet when the place was changed. */
    @Test
    void a_tap_that_names_the_place_whose_meter_was_read_holds_and_an_unknown_place_is_refused() throws Exception {
        JsonNode unknown = reader.tap("attempt.station", about(curlew).put("station", "nowhere"));
        assertTrue(unknown.path("reason").asText().contains("no such attempt or winding place"), unknown.toString());
        CalledForTests.letWind(laptop, curlew.attempt());
        String shown = keys(curlew);
        saved(choose(curlew, "Table by the door"));
        CalledForTests.letWind(laptop, curlew.attempt());
        saved(reader.tap(
                "wind.begin", about(curlew).put("motor", data(shown, "of")).put("station", data(shown, "station"))));
        reads(curlew, List.of("15", "10", "25"), 0.02, figures(curlew, POST));
    }

    @Test
    void turns_that_nobody_read_are_of_the_winder_at_its_place() throws Exception {
        CalledForTests.letWind(laptop, curlew.attempt());
        for (String to : List.of("winding", "holding", "released", "landed")) {
            laptop.form("/attempt/move", Map.of("attempt", curlew.attempt(), "to", to));
        }
        var sent = laptop.form(
                "/winding/unread",
                Map.of(
                        "attempt",
                        curlew.attempt(),
                        "stop",
                        "100",
                        "backOff",
                        "0",
                        "peak",
                        "0.3 in-ozf",
                        "launch",
                        "0.2 in-ozf"));
        assertEquals(200, sent.statusCode(), sent.body());
        var left = laptop.form("/winding/landed", Map.of("attempt", curlew.attempt(), "remaining", "20"));
        assertEquals(200, left.statusCode(), left.body());
        String told = laptop.get("/winding/part?flight=" + curlew.attempt()).body();
        assertTrue(told.contains("1600 motor turns"), told);
    }
}
