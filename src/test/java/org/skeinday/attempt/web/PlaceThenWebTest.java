package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.skeinday.fault.CalledForTests.value;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.fault.CalledForTests;
import org.skeinday.prepare.FilledForms;

/** A winding place that is described anew changes nothing of what was wound there: the record has it as it was. */
@Timeout(300)
class PlaceThenWebTest extends TwoPlacesDay {
    private static final Map<String, String> ANEW =
            Map.of("station", "Corner post", "meter", "dial 9", "division", "0.05 in-ozf", "winder-ratio", "5");

    private void describe(String place, Map<String, String> anew) throws Exception {
        var forms = new FilledForms(laptop);
        var saved = forms.save("stations", forms.row("stations", place), anew);
        assertEquals(204, saved.statusCode(), saved.body());
    }

    private void move(Side side, String to) throws Exception {
        var moved = laptop.form("/attempt/move", Map.of("attempt", side.attempt(), "to", to));
        assertEquals(200, moved.statusCode(), moved.body());
    }

    private String recorded(Side side) throws Exception {
        return value(laptop.get("/attempt/" + side.attempt()).body(), "<dt>wound at</dt><dd>([^<]+)<");
    }

    @Test
    void the_record_names_a_place_as_it_was_at_the_first_crank_turn() throws Exception {
        String wind = begin(curlew);
        describe("Spare post", ANEW);
        assertEquals(POST, woundAt(curlew));
        String keys = keys(curlew);
        assertEquals(
                List.of("15", "25"),
                List.of(value(keys, "data-ceiling=\"([^\"]*)\""), value(keys, "data-meter-ends=\"([^\"]*)\"")));
        stopped(wind);
        move(curlew, "released");
        move(curlew, "landed");
        assertEquals(POST, recorded(curlew));
        fromTheJournal();
        assertEquals(POST, recorded(curlew));
        saved(choose(avocet, "Corner post"));
        assertEquals("Corner post · dial 9, division 0.05 in-ozf · winder 5 to 1", woundAt(avocet), "what is to come");
    }

    /** Place by hand, then a spare, then a start from the journal, then corrections before and after the first crank turn. */
    @Test
    void a_place_chosen_by_hand_stays_with_the_spare_and_follows_corrections_until_it_is_wound() throws Exception {
        saved(choose(avocet, "Spare post"));
        saved(choose(curlew, "Table by the door"));
        String other = new FilledForms(laptop).row("motors", "B2").replaceFirst(".*/", "");
        CalledForTests.letWind(laptop, curlew.attempt());
        String seen = value(keys(curlew), "data-of=\"([^\"]+)\"");
        var taken = laptop.form(
                "/attempt/take-motor", Map.of("attempt", curlew.attempt(), "motor", other, "seenMotor", seen));
        assertEquals(200, taken.statusCode(), taken.body());
        fromTheJournal();
        assertEquals(TABLE, woundAt(curlew));
        describe("Table by the door", Map.of("winder-ratio", "12", "ratio-checked", "2026-05-02"));
        String corrected = TABLE.replace("10 to 1", "12 to 1");
        assertEquals(corrected, woundAt(curlew));
        String wind = begin(curlew);
        describe("Table by the door", Map.of("station", "Table", "winder-ratio", "7"));
        assertEquals(corrected, woundAt(curlew));
        stopped(wind);
        move(curlew, "released");
        laptop.form("/winding/count", Map.of("wind", wind, "atFull", "60", "stop", "100", "backOff", "0"));
        says(
                "1200 motor turns",
                laptop.get("/winding/part?flight=" + curlew.attempt()).body());
        assertEquals(corrected, recorded(curlew));
    }

    @Test
    void crank_turns_that_nobody_read_are_of_the_winder_as_it_was() throws Exception {
        CalledForTests.letWind(laptop, curlew.attempt());
        for (String to : List.of("winding", "holding", "released", "landed")) {
            move(curlew, to);
        }
        describe("Spare post", ANEW);
        var sent = laptop.form(
                "/winding/unread",
                Map.of(
                        "attempt", curlew.attempt(),
                        "stop", "100",
                        "backOff", "0",
                        "peak", "0.3 in-ozf",
                        "launch", "0.2 in-ozf"));
        assertEquals(200, sent.statusCode(), sent.body());
        laptop.form("/winding/landed", Map.of("attempt", curlew.attempt(), "remaining", "20"));
        says(
                "1600 motor turns",
                laptop.get("/winding/part?flight=" + curlew.attempt()).body());
        fromTheJournal();
        says(
                "1600 motor turns",
                laptop.get("/winding/part?flight=" + curlew.attempt()).body());
    }
}
