package org.skeinday.device.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

/** How fast a PIN can be guessed, and who is kept waiting. */
class PinGateTest {
    private final Stepped clock = new Stepped();
    private final PinGate gate = new PinGate(typed -> typed.equals("right"), clock);

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

    private String wrong(String from) {
        return gate.problem(from, "wrong");
    }

    private static boolean waits(String problem) {
        return problem.startsWith("Too many wrong tries: wait");
    }

    @Test
    void five_tries_are_free_then_each_waits_twice_as_long() {
        for (int i = 0; i < 5; i++) {
            assertEquals("That is not the coach's PIN.", wrong("192.168.1.7"));
        }
        assertEquals("Too many wrong tries: wait 2 s.", gate.problem("192.168.1.7", "right"));
        clock.ms += 2_000;
        assertEquals("That is not the coach's PIN.", wrong("192.168.1.7"));
        assertEquals("Too many wrong tries: wait 4 s.", wrong("192.168.1.7"));
        clock.ms += 4_000;
        assertEquals("", gate.problem("192.168.1.7", "right"));
        assertEquals("That is not the coach's PIN.", wrong("192.168.1.7"), "and the count begins anew");
    }

    @Test
    void one_device_does_not_keep_another_waiting_before_many_have_guessed() {
        for (int i = 0; i < 8; i++) {
            wrong("192.168.1.7");
        }
        assertTrue(waits(wrong("192.168.1.7")));
        assertEquals("", gate.problem("192.168.1.8", "right"));
    }

    @Test
    void guesses_from_ever_new_addresses_are_slowed_over_all_but_never_the_laptop() {
        for (int i = 0; i < 40; i++) {
            wrong("192.168.1." + i);
        }
        assertTrue(waits(gate.problem("192.168.2.1", "right")), "over all");
        for (String laptop : new String[] {"127.0.0.1", "0:0:0:0:0:0:0:1", "[0:0:0:0:0:0:0:1]"}) {
            assertEquals("", gate.problem(laptop, "right"), laptop);
        }
    }

    @Test
    void a_night_of_guessing_tries_few_of_a_million() {
        int tried = 0;
        for (int i = 0; i < 10 * 3600; i++) { // ten hours, once a second, each time from another address
            tried += waits(wrong("10.0." + i % 250 + "." + i / 250 % 250)) ? 0 : 1;
            clock.ms += 1_000;
        }
        assertTrue(tried < 200, "tried " + tried + " of 1,000,000");
    }

    @Test
    void guessing_on_the_lent_laptop_is_slowed_too() {
        for (int i = 0; i < 5; i++) {
            wrong("127.0.0.1");
        }
        assertTrue(waits(gate.problem("127.0.0.1", "right")));
        assertEquals("", gate.problem("192.168.1.8", "right"), "the coach's own device is not");
    }
}
