package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;

/** Two motors do not hang on one hook: a free place is taken though it has no meter, and nothing is wound where one hangs. */
@Timeout(300)
class PlaceHeldWebTest extends TwoPlacesDay {
    private static final String ON_IT =
            "Curlew, attempt 1 has its motor at Table by the door: choose another winding place on Now, or wait";

    @Override
    void describePost() {
        // as the demo has it: no meter
    }

    private void phase(String wind, String phase, long elapsedMs) throws Exception {
        saved(reader.tap(
                "wind.phase",
                Json.MAPPER
                        .createObjectNode()
                        .put("wind", wind)
                        .put("phase", phase)
                        .put("elapsedMs", elapsedMs)));
    }

    private String start(Side side, int expected) throws Exception {
        var sent = laptop.form("/attempt/move", Map.of("attempt", side.attempt(), "to", "winding"));
        assertEquals(expected, sent.statusCode(), sent.body());
        return sent.body();
    }

    @Test
    void a_second_attempt_is_called_to_a_free_place_and_not_wound_where_another_hangs() throws Exception {
        says("Table by the door", woundAt(curlew));
        says("Spare post", woundAt(avocet));
        String wind = begin(curlew);
        saved(choose(avocet, "Table by the door"));
        CalledForTests.letWind(laptop, avocet.attempt());
        says(ON_IT, start(avocet, 422));
        phase(wind, "stopped", 60_000);
        phase(wind, "backed-off", 61_000);
        says(ON_IT, start(avocet, 422));
        String motor = CalledForTests.value(keys(avocet), "data-of=\"([^\"]+)\"");
        JsonNode tapped = reader.tap("wind.begin", about(avocet).put("motor", motor));
        says(ON_IT, tapped.path("reason").asText());
        String card = laptop.get("/now?attempt=" + avocet.attempt()).body();
        says("name=\"to\" value=\"winding\"", card);
        phase(wind, "off-meter", 90_000);
        start(avocet, 200);
    }

    @Test
    void where_nobody_reads_it_the_other_place_is_taken() throws Exception {
        CalledForTests.letWind(laptop, curlew.attempt());
        start(curlew, 200);
        laptop.form("/attempt/move", Map.of("attempt", curlew.attempt(), "to", "holding"));
        saved(choose(avocet, "Table by the door"));
        CalledForTests.letWind(laptop, avocet.attempt());
        says(ON_IT, start(avocet, 422));
        saved(choose(avocet, "Spare post"));
        CalledForTests.letWind(laptop, avocet.attempt());
        start(avocet, 200);
    }
}
