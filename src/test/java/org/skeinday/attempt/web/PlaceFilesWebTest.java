package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.skeinday.fault.CalledForTests.value;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;
import org.skeinday.prepare.FilledForms;

/** Files carry where an attempt was wound, and what that place was then: another laptop tells the same of it. */
@Timeout(300)
class PlaceFilesWebTest extends TwoPlacesDay {
    private void flown(Side side) throws Exception {
        stopped(begin(side));
        for (String to : List.of("released", "landed")) {
            laptop.form("/attempt/move", Map.of("attempt", side.attempt(), "to", to));
        }
    }

    @Test
    void the_whole_record_and_an_event_alone_carry_the_place_as_it_was() throws Exception {
        flown(curlew);
        var forms = new FilledForms(laptop);
        var anew = forms.save(
                "stations",
                forms.row("stations", "Spare post"),
                Map.of("meter", "dial 9", "division", "0.05 in-ozf", "winder-ratio", "5"));
        assertEquals(204, anew.statusCode(), anew.body());
        String event = value(laptop.get("/export").body(), "/export.json(\\?event=[^\"]+)\"");
        for (String part : List.of("", event)) {
            JsonNode rows = Json.MAPPER
                    .readTree(laptop.get("/export.json" + part).body())
                    .path("tables")
                    .path("attempts");
            JsonNode row = rows.path(rows.path(0).path("entry").asText().equals("Curlew") ? 0 : 1);
            assertEquals("Curlew", row.path("entry").asText(), rows.toString());
            assertEquals("Spare post", row.path("wound at").asText(), rows.toString());
            assertEquals("dial 2", row.path("meter").asText(), rows.toString());
            assertEquals(20, row.path("winder ratio").asInt(), rows.toString());
        }
        byte[] whole = laptop.get("/export.json").body().getBytes(StandardCharsets.UTF_8);
        try (App other = Demo.startEmpty(root.resolve("other"))) {
            var there = new Visitor(other.port(), "", 9_911);
            var taken = there.upload("/import/take", "day.json", whole, Map.of());
            assertEquals(200, taken.statusCode(), taken.body());
            String attempt = value(there.get("/results").body(), "href=\"/attempt/([^\"]+)\"[^>]*>[^<]*Curlew");
            String record = there.get("/attempt/" + attempt).body();
            assertEquals(POST, value(record, "<dt>wound at</dt><dd>([^<]+)<"));
            assertEquals(
                    laptop.zip("/export.zip").get("attempts.csv"),
                    there.zip("/export.zip").get("attempts.csv"));
        }
    }
}
