package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Catalogue;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Verify;

class DemoDayTest {
    @TempDir
    Path folder;

    @Test
    void the_demo_goes_through_the_importer_and_its_first_window_opens_in_twenty_minutes() throws Exception {
        Clock clock = Clock.fixed(Instant.parse("2026-11-25T09:00:30Z"), ZoneId.systemDefault());
        DemoDay.load(folder, clock, new SecureRandom());
        try (ActStore record = ActStore.open(folder, Catalogue.projection(), clock)) {
            record.read(tx -> {
                var event = EventStore.all(tx).get(1);
                assertEquals("hosting", event.kind());
                assertEquals(6, EntryStore.ofEvent(tx, event.id()).size());
                FlownStore.own(tx).stream()
                        .map(f -> Instant.ofEpochMilli(f.atMs())
                                .atZone(clock.getZone())
                                .getHour())
                        .forEach(hour -> assertTrue(hour >= 18 && hour < 20, "practice at " + hour));
                assertEquals(14, MotorStore.all(tx).size());
                long opens = WindowStore.ofEvent(tx, event.id()).get(0).opensAtMs();
                assertEquals(Instant.parse("2026-11-25T09:20:00Z").toEpochMilli(), opens);
                return true;
            });
            assertTrue(record.people().names().containsValue("Ines"));
        }
        assertEquals(1, new Verify(Catalogue.projection()).check(folder).records());
    }
}
