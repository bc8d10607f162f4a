package org.skeinday.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Clock;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.attempt.web.HostedDay;
import org.skeinday.platform.record.Json;

/** Whoever hosts has a card for each attempt that any entry still has. */
@Timeout(60)
class HostCardsWebTest {
    private static final int ATTEMPTS = 2;

    @TempDir
    Path root;

    @Test
    void each_attempt_that_is_left_has_a_card_whoever_flies_it() throws Exception {
        try (App app =
                Demo.startEmpty(HostedDay.into(root.resolve("day"), 14, ATTEMPTS, 31), Clock.systemDefaultZone())) {
            Visitor laptop = new Visitor(app.port(), "", 1);
            String cards = laptop.get("/cards/host").body();
            JsonNode entries =
                    Json.MAPPER.readTree(laptop.get("/results.json").body()).path("entries");
            int left = 0;
            for (JsonNode entry : entries) {
                long used = StreamSupport.stream(entry.path("tries").spliterator(), false)
                        .map(t -> t.path("counts").asText())
                        .filter(counts -> counts.equals("official flight") || counts.equals("used up without a time"))
                        .count();
                left += ATTEMPTS - (int) used;
                String name = entry.path("entry").asText();
                assertEquals(ATTEMPTS - used, cards.split(">" + name + ", attempt ", -1).length - 1, name);
            }
            assertEquals(left, cards.split("class=\"host-card\"", -1).length - 1);
            assertTrue(left > 4, cards);
            assertTrue(laptop.get("/cards").body().contains("href=\"/cards/host\""), "the way there");
            assertEquals(
                    403, Demo.joined(app, "viewer", "", 2).get("/cards/host").statusCode());
        }
    }

    @Test
    void elsewhere_the_host_has_cards_of_its_own() throws Exception {
        try (App app = Demo.startEmpty(root.resolve("empty"), Clock.systemDefaultZone())) {
            Visitor laptop = new Visitor(app.port(), "", 1);
            assertFalse(laptop.get("/cards/host").body().contains("host-card\""), "there is no event");
        }
    }
}
