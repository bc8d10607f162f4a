package org.skeinday.device.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.skeinday.device.Device;

class KnownTokensTest {
    private static final Device TABLET = new Device("d1", "ada", "helper", 1000, "", "");

    private final Map<String, Device> record = new ConcurrentHashMap<>(Map.of("token", TABLET));
    private final AtomicInteger asked = new AtomicInteger();
    private final KnownTokens tokens = new KnownTokens(token -> {
        asked.incrementAndGet();
        return Optional.ofNullable(record.get(token));
    });

    @Test
    void the_record_is_asked_once_for_each_token() {
        assertEquals(Optional.of(TABLET), tokens.ofToken("token"));
        assertEquals(Optional.of(TABLET), tokens.ofToken("token"));
        assertEquals(1, asked.get());
    }

    @Test
    void a_device_that_was_ended_is_known_no_more_after_the_change() {
        tokens.ofToken("token");
        record.clear();
        tokens.changed();
        assertEquals(Optional.empty(), tokens.ofToken("token"));
    }

    @Test
    void a_token_that_nobody_holds_is_asked_for_each_time_and_serves_as_soon_as_somebody_does() {
        assertEquals(Optional.empty(), tokens.ofToken("new"));
        record.put("new", TABLET);
        assertEquals(Optional.of(TABLET), tokens.ofToken("new"));
    }

    @Test
    void what_was_read_before_a_change_is_not_kept_after_it() {
        KnownTokens[] own = new KnownTokens[1];
        own[0] = new KnownTokens(token -> {
            Optional<Device> read = Optional.ofNullable(record.get(token));
            if (record.remove(token) != null) {
                own[0].changed(); // ended by another while this one was reading
            }
            return read;
        });
        assertEquals(Optional.of(TABLET), own[0].ofToken("token"), "this request came in before");
        assertEquals(Optional.empty(), own[0].ofToken("token"));
    }
}
