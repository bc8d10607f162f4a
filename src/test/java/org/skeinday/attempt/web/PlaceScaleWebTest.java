package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.fault.CalledForTests;

/** A torque is held against the scale of the meter it was read from, not against the largest of the hall's. */
@Timeout(60)
class PlaceScaleWebTest extends TwoPlacesDay {
    private String unread(Side side, String peak) throws Exception {
        CalledForTests.letWind(laptop, side.attempt());
        for (String to : List.of("winding", "holding", "released", "landed")) {
            var moved = laptop.form("/attempt/move", Map.of("attempt", side.attempt(), "to", to, "seen", ""));
            assertEquals(200, moved.statusCode(), moved.body());
        }
        return laptop.form(
                        "/winding/unread",
                        Map.of("attempt", side.attempt(), "stop", "100", "backOff", "0", "peak", peak, "launch", ""))
                .body();
    }

    @Test
    void the_scale_is_that_of_the_place_of_the_attempt() throws Exception {
        saved(choose(curlew, "Spare post"));
        saved(choose(avocet, "Table by the door"));
        says("whose scale ends at 0.5 in-ozf", unread(curlew, "0.6 in-ozf"));
        saysNot("whose scale ends at", unread(avocet, "0.6 in-ozf"));
    }
}
