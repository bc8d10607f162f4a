package org.skeinday.device.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The codes in their file: over a restart, cut short, of another day. */
class KeptCodesTest {
    private static final String TODAY = "2026-05-09T10:00:00Z";

    private static final String ONE = "1".repeat(32);
    private static final String OTHER = "2".repeat(32);

    @TempDir
    Path data;

    private KeptCodes at(String instant) throws IOException {
        Clock clock = Clock.fixed(Instant.parse(instant), ZoneOffset.UTC);
        return new KeptCodes(data, false, clock, new SecureRandom(), () -> {});
    }

    @Test
    void all_three_hold_over_a_restart() throws IOException {
        KeptCodes first = at(TODAY);
        assertEquals(Optional.empty(), first.ofDay(), "none before the coach hands one out");
        first.handOut(ONE);
        KeptCodes again = at(TODAY);
        assertEquals(first.link(), again.link());
        assertEquals(first.typed(), again.typed());
        assertEquals(first.ofDay(), again.ofDay());
        assertTrue(first.typed().matches("[34679ACDEFGHJKMNPRTWXY]{6}"), first.typed());
    }

    @Test
    void the_code_of_the_day_ends_at_midnight() throws IOException {
        at(TODAY).handOut(ONE);
        assertTrue(at("2026-05-09T23:59:59Z").ofDay().isPresent());
        assertEquals(Optional.empty(), at("2026-05-10T00:00:00Z").ofDay());
    }

    @Test
    void new_ones_leave_nothing_of_the_old() throws IOException {
        KeptCodes codes = at(TODAY);
        codes.handOut(ONE);
        String link = codes.link().text();
        String typed = codes.typed();
        codes.renew(OTHER);
        assertNotEquals(link, codes.link().text());
        assertEquals(codes.link(), at(TODAY).link(), "kept");
        assertNotEquals(typed, codes.typed());
        assertEquals(Optional.empty(), codes.ofDay());
        String file = Files.readString(data.resolve(KeptCodes.FILE)) + Files.readString(data.resolve("join-code"));
        assertFalse(file.contains(link) || file.contains(typed), file);
    }

    /** A folder in the place where each file is written aside stands for a disk that takes no more. */
    @Test
    void the_old_ones_stop_though_the_disk_takes_no_new_ones_and_the_repeat_keeps_them() throws IOException {
        for (String file : new String[] {"join-code", KeptCodes.FILE}) {
            java.util.concurrent.atomic.AtomicInteger told = new java.util.concurrent.atomic.AtomicInteger();
            Clock clock = Clock.fixed(Instant.parse(TODAY), ZoneOffset.UTC);
            KeptCodes codes = new KeptCodes(data, false, clock, new SecureRandom(), told::incrementAndGet);
            codes.handOut(file.equals("join-code") ? ONE : "4".repeat(32));
            String link = codes.link().text();
            String typed = codes.typed();
            Path full = Files.createDirectories(
                    data.resolve(file + ".written-aside").resolve("full"));
            String act = file.equals("join-code") ? OTHER : "5".repeat(32);
            assertThrows(IOException.class, () -> codes.renew(act));
            assertNotEquals(link, codes.link().text());
            assertNotEquals(typed, codes.typed());
            assertEquals(Optional.empty(), codes.ofDay());
            assertEquals(2, told.get(), "devices are told though it failed");
            assertFalse(kept("join-code").contains(link), "nor after a restart");
            assertFalse(kept(KeptCodes.FILE).contains(typed), "nor after a restart");
            Files.delete(full);
            Files.delete(full.getParent());
            codes.renew(act);
            assertEquals(codes.link(), at(TODAY).link());
            assertEquals(codes.typed(), at(TODAY).typed());
        }
    }

    private String kept(String file) throws IOException {
        return Files.exists(data.resolve(file)) ? Files.readString(data.resolve(file)) : "";
    }

    @Test
    void a_form_that_is_sent_again_makes_no_other_codes_over_a_restart_too() throws IOException {
        KeptCodes codes = at(TODAY);
        codes.renew(ONE);
        codes.handOut(OTHER);
        String before = codes.link().text() + codes.typed() + codes.ofDay();
        codes.renew(ONE);
        codes.handOut(OTHER);
        assertEquals(before, codes.link().text() + codes.typed() + codes.ofDay());
        KeptCodes again = at(TODAY);
        again.renew(ONE);
        again.handOut(OTHER);
        assertEquals(before, again.link().text() + again.typed() + again.ofDay());
        again.handOut("3".repeat(32));
        assertNotEquals(before, again.link().text() + again.typed() + again.ofDay());
    }

    @Test
    void a_file_of_before_keeps_its_link_and_gets_the_others() throws IOException {
        Files.writeString(data.resolve("join-code"), "ab".repeat(16));
        KeptCodes codes = at(TODAY);
        assertEquals("ab".repeat(16), codes.link().text());
        assertEquals(codes.typed(), at(TODAY).typed());
    }

    @Test
    void an_empty_cut_or_strange_file_is_made_anew() throws IOException {
        for (String bad :
                new String[] {"", "\n\n", "K7P", "000000\n", "\u0000\u0001", "K7P4TX\nA", "\nAAA000 2026-05-09"}) {
            Files.writeString(data.resolve(KeptCodes.FILE), bad);
            KeptCodes codes = at(TODAY);
            assertEquals(6, codes.typed().length(), bad);
            assertEquals(Optional.empty(), codes.ofDay(), bad);
        }
    }
}
