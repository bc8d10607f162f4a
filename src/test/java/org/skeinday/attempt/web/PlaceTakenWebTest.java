package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A motor that was given up with its turns on hangs at its place until it is run back: nobody is sent there meanwhile. */
@Timeout(300)
class PlaceTakenWebTest extends TwoPlacesDay {
    private static final String THERE = POST + " · Curlew is to be run back there";

    private void abandon(Side side) throws Exception {
        var sent = laptop.form("/attempt/give-up", Map.of("attempt", side.attempt(), "reason", "the window is over"));
        assertEquals(200, sent.statusCode(), sent.body());
    }

    @Test
    void a_motor_given_up_wound_keeps_its_place_until_somebody_says_the_turns() throws Exception {
        assertEquals(POST, woundAt(curlew));
        stopped(begin(curlew));
        String motor = value(keys(curlew), "data-of");
        abandon(avocet);
        abandon(curlew);
        Side second = called("Curlew", 2);
        assertEquals(TABLE, woundAt(second), "its own place of before is not free");
        says(THERE, laptop.get("/now?attempt=" + second.attempt()).body());
        fromTheJournal();
        assertEquals(TABLE, woundAt(second));
        says(THERE, laptop.get("/now?attempt=" + second.attempt()).body());
        var told =
                laptop.form("/attempt/run-back", Map.of("attempt", curlew.attempt(), "motor", motor, "turns", "100"));
        assertEquals(200, told.statusCode(), told.body());
        saysNot(
                "is to be run back",
                laptop.get("/now?attempt=" + second.attempt()).body());
        assertEquals(POST, woundAt(called("Avocet", 2)), "free again");
    }

    /** It broke before anybody ran it back: the place is free once people are safe and somebody has looked where. */
    @Test
    void what_breaks_after_it_was_given_up_keeps_its_place_until_people_have_looked() throws Exception {
        stopped(begin(curlew));
        String motor = value(keys(curlew), "data-of");
        abandon(curlew);
        abandon(avocet);
        Side second = called("Curlew", 2);
        Map<String, String> about = Map.of("attempt", curlew.attempt(), "motor", motor);
        assertEquals(200, laptop.form("/attempt/broke", about).statusCode());
        says(THERE, laptop.get("/now?attempt=" + second.attempt()).body());
        assertEquals(200, laptop.form("/attempt/people-safe", about).statusCode());
        says(THERE, laptop.get("/now?attempt=" + second.attempt()).body());
        var parted =
                laptop.form("/attempt/parted", Map.of("attempt", curlew.attempt(), "motor", motor, "place", "strand"));
        assertEquals(200, parted.statusCode(), parted.body());
        saysNot(
                "is to be run back",
                laptop.get("/now?attempt=" + second.attempt()).body());
    }

    @Test
    void the_record_names_the_place_of_each_wind() throws Exception {
        stopped(begin(curlew));
        String motor = value(keys(curlew), "data-of");
        String page = laptop.get("/attempt/" + curlew.attempt()).body();
        says("<dt>wound at</dt><dd>" + POST + "<", page);
        says(", at Spare post<", page);
        var back =
                laptop.form("/attempt/run-back", Map.of("attempt", curlew.attempt(), "motor", motor, "turns", "100"));
        assertEquals(200, back.statusCode(), back.body());
        saved(choose(curlew, "Table by the door"));
        says(
                "<dt>wound at</dt><dd>" + TABLE + "<",
                laptop.get("/attempt/" + curlew.attempt()).body());
        begin(curlew);
        page = laptop.get("/attempt/" + curlew.attempt()).body();
        says(", at Spare post<", page);
        says(", at Table by the door<", page);
        saysNot("<dt>wound at</dt>", page);
    }

    private static String value(String keys, String name) {
        return org.skeinday.fault.CalledForTests.value(keys, name + "=\"([^\"]+)\"");
    }
}
