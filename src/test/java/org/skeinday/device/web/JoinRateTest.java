package org.skeinday.device.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.skeinday.device.web.CodeGate.Opens;

/** One with the wall's link makes no devices without end, and a hall joins all the same. */
class JoinRateTest {
    private final Stepped clock = new Stepped();
    private final JoinRate rate = new JoinRate(clock);

    private static final class Stepped extends Clock {
        private long ms = 1_000_000;

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return Instant.ofEpochMilli(ms);
        }
    }

    private boolean joins(String from) {
        boolean may = rate.problem(from, Opens.DOOR).isEmpty();
        if (may) {
            rate.count(from);
        }
        return may;
    }

    private int joinsOf(int tries, String from) {
        int joined = 0;
        for (int i = 0; i < tries; i++) {
            joined += joins(from) ? 1 : 0;
        }
        return joined;
    }

    @Test
    void of_150_in_one_moment_30_join_and_the_next_in_words() {
        assertEquals(30, joinsOf(150, "10.0.0.1"));
        assertEquals("Very many new devices have joined: wait 2 s.", rate.problem("10.0.0.1", Opens.DOOR));
        assertEquals("", rate.problem("10.0.0.1", Opens.WATCHES), "who has the code of the day never waits");
        assertTrue(joins("10.0.0.2"), "another address");
        clock.ms += 3_600_000;
        assertEquals(30, joinsOf(150, "10.0.0.1"));
    }

    @Test
    void an_hour_of_trying_makes_few_more() {
        int joined = 0;
        for (int s = 0; s < 3_600; s++) {
            joined += joinsOf(1, "10.0.0.1");
            clock.ms += 1_000;
        }
        assertTrue(joined > 30 && joined < 50, "joined " + joined);
    }

    @Test
    void a_hall_of_two_hundred_addresses_joins_in_one_moment_and_more_wait_half_a_minute_at_most() {
        for (int i = 0; i < 200; i++) {
            assertTrue(joins("10.0.1." + i), "phone " + i);
        }
        for (int i = 0; i < 20; i++) {
            int waited = 0;
            while (!joins("10.0.2." + i)) {
                clock.ms += 1_000;
                waited++;
            }
            assertTrue(waited >= 2 && waited <= 32, "phone " + i + " waited " + waited + " s");
        }
    }

    @Test
    void the_laptop_never_waits() {
        assertEquals(500, joinsOf(500, "127.0.0.1"));
        assertTrue(joins("10.0.0.1"), "nor makes others wait");
    }
}
