package org.skeinday.device.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.skeinday.device.JoinCode;
import org.skeinday.device.web.CodeGate.Opens;

/** What each code opens, and how fast one can be guessed. */
class CodeGateTest {
    private static final String LINK = "ab".repeat(16);

    private final Stepped clock = new Stepped();
    private final Codes codes = new Codes();
    private final CodeGate gate = new CodeGate(codes, clock);

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

    private static final class Codes implements JoinCodes {
        private final JoinCode link = new JoinCode(LINK);
        private String typed = "K7P4TX";
        private Optional<String> ofDay = Optional.of("M9NAAC");

        @Override
        public JoinCode link() {
            return link;
        }

        @Override
        public String typed() {
            return typed;
        }

        @Override
        public Optional<String> ofDay() {
            return ofDay;
        }

        @Override
        public void renew(String act) {}

        @Override
        public void handOut(String act) {}
    }

    private Opens opened(String from, String typed) {
        return gate.ask(from, false, "", typed).opens();
    }

    private boolean waits(String from, String typed) {
        return gate.ask(from, false, "", typed).problem().startsWith("Too many wrong tries: wait");
    }

    @Test
    void the_link_and_the_typed_code_open_the_door_and_the_code_of_the_day_more() {
        assertEquals(Opens.DOOR, gate.ask("10.0.0.1", false, LINK, "").opens());
        assertEquals(Opens.DOOR, opened("10.0.0.1", "k7p 4tx"));
        assertEquals(Opens.DOOR, opened("10.0.0.1", " K7P-4TX "));
        assertEquals(Opens.WATCHES, opened("10.0.0.1", "m9n aac"));
        assertEquals(Opens.WATCHES, gate.ask("10.0.0.1", false, LINK, "M9NAAC").opens());
        assertEquals(
                Opens.DOOR,
                gate.ask("10.0.0.1", false, LINK, "K7P4TX").opens(),
                "both of the wall are no more than one");
    }

    @Test
    void nothing_opens_by_an_empty_or_a_malformed_secret() {
        codes.typed = "";
        codes.ofDay = Optional.of("");
        for (String typed : new String[] {"", " ", "K7P4TX", "------"}) {
            CodeGate.Found found = gate.ask("10.0.0.1", false, "", typed);
            assertEquals(Opens.NOTHING, found.opens(), typed);
            assertTrue(!found.problem().isEmpty());
        }
    }

    @Test
    void who_knows_the_code_on_the_wall_does_not_get_wrong_tries_at_the_code_of_the_day_forgotten() {
        for (int i = 0; i < 5; i++) {
            assertEquals(Opens.NOTHING, opened("10.0.0.1", "AAAAA" + "34679".charAt(i)));
            clock.ms += 60_000; // whatever the door itself would have waited
            assertEquals(Opens.DOOR, opened("10.0.0.1", "K7P4TX"));
        }
        int looked = 0;
        for (int i = 0; i < 3600; i++) { // an hour, once a second, the right code of the wall in between
            looked += waits("10.0.0.1", "AAAAAA") ? 0 : 1;
            opened("10.0.0.1", "K7P4TX");
            clock.ms += 1_000;
        }
        assertTrue(looked < 130, "looked at " + looked + " of an hour's tries");
    }

    @Test
    void while_tries_wait_the_right_code_of_the_day_answers_as_a_wrong_one_does() {
        for (int i = 0; i < 6; i++) {
            opened("10.0.0.1", "AAAAAA");
            opened("10.0.0.1", "K7P4TX");
        }
        assertEquals(
                gate.ask("10.0.0.1", false, "", "AAAAAA").problem(),
                gate.ask("10.0.0.1", false, "", "M9NAAC").problem());
    }

    @Test
    void a_day_of_guessing_from_ever_new_addresses_tries_few_of_113_million() {
        int tried = 0;
        for (int i = 0; i < 10 * 3600; i++) {
            tried += waits("10.0." + i % 250 + "." + i / 250 % 250, "AAAAAA") ? 0 : 1;
            clock.ms += 1_000;
        }
        assertTrue(tried < 1_300, "tried " + tried);
    }

    @Test
    void many_who_type_the_code_of_the_day_keep_nobody_waiting() {
        for (int i = 0; i < 60; i++) {
            assertEquals(Opens.WATCHES, opened("10.0.0.7", "M9NAAC"));
        }
        assertEquals(Opens.DOOR, opened("10.0.0.8", "K7P4TX"));
    }

    @Test
    void guesses_keep_nobody_waiting_who_scans() {
        for (int i = 0; i < 60; i++) {
            opened("10.0.1." + i, "AAAAAA");
        }
        assertTrue(waits("10.0.0.9", "K7P4TX"), "over all");
        assertEquals(Opens.DOOR, gate.ask("10.0.0.9", false, LINK, "").opens());
    }

    @Test
    void guesses_of_strangers_keep_nobody_waiting_who_has_joined_or_brings_the_link() {
        for (int i = 0; i < 60; i++) {
            opened("10.0.1." + i, "AAAAAA");
        }
        assertTrue(waits("10.0.0.9", "M9NAAC"), "a stranger");
        assertEquals(Opens.WATCHES, gate.ask("10.0.0.9", true, "", "M9NAAC").opens(), "who has joined");
        assertEquals(Opens.WATCHES, gate.ask("10.0.0.9", false, LINK, "M9NAAC").opens(), "who brings the link");
    }

    @Test
    void guesses_of_those_who_are_known_are_slowed_over_all_of_them_too() {
        int looked = 0;
        for (int i = 0; i < 3_600; i++) {
            String problem =
                    gate.ask("10.0." + i % 250 + ".1", true, "", "AAAAAA").problem();
            looked += problem.startsWith("Too many wrong tries: wait") ? 0 : 1;
            clock.ms += 1_000;
        }
        assertTrue(looked < 160, "looked at " + looked);
    }
}
