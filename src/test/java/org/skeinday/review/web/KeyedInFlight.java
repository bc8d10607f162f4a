package org.skeinday.review.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.Map;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;

/** An official flight of Curlew with Reed One on motor A3, from a card, without its turns left. */
final class KeyedInFlight {
    private KeyedInFlight() {}

    /** @return its id, as its page is called */
    static String of(Visitor laptop, String contacts, String time) throws Exception {
        return of(laptop, Map.of("watch-1", time, "watch-2", time, "contacts", contacts));
    }

    /** @param more fields of the card */
    static String of(Visitor laptop, Map<String, String> more) throws Exception {
        var keyed = laptop.form("/key-in", card(laptop, more));
        assertEquals(200, keyed.statusCode(), keyed.body());
        return CalledForTests.value(laptop.get("/winding").body(), "/winding\\?flight=([^\"]+)\"");
    }

    /** @param more fields of the card, in place of those that it has */
    static Map<String, String> card(Visitor laptop, Map<String, String> more) throws Exception {
        String page = laptop.get("/key-in").body();
        String entry = CalledForTests.value(page, "<option value=\"([^\"]+)\"[^>]*>Curlew</option>");
        Map<String, String> card = new HashMap<>(Map.of("entry", entry, "attempt", "1", "model", "Reed One"));
        card.putAll(Map.of("motor", "A3", "stop-count", "210", "back-off", "3"));
        card.putAll(more);
        return card;
    }
}
