package org.skeinday.platform.folder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.App;
import org.skeinday.Demo;

/** Garbage where the second place for backups is named: the first place gets its own all the same, and it is said. */
@Timeout(60)
class SecondPlaceTest {
    @TempDir
    Path root;

    private static long backups(Path day) throws IOException {
        try (Stream<Path> all = Files.list(day.resolve(Backups.FOLDER))) {
            return all.count();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0x00, 0xff})
    void the_first_place_is_served_and_the_second_is_told_as_trouble(int garbage) throws Exception {
        Path day = Demo.into(root.resolve("day"));
        Files.write(day.resolve(Backups.SECOND), new byte[] {'/', (byte) garbage, 'x'});
        Backups backups = new Backups(day, Clock.systemUTC());
        backups.now();
        assertEquals(1, backups(day));
        assertTrue(backups.trouble().contains(Backups.SECOND + " names none"), backups.trouble());
        assertThrows(IOException.class, () -> Backups.second(day));
        Files.delete(day.resolve(Backups.SECOND));
        backups.now();
        assertEquals("", backups.trouble());
    }

    @Test
    void the_program_closes_its_record_and_starts_again() throws Exception {
        Path day = Demo.into(root.resolve("day"));
        Files.write(day.resolve(Backups.SECOND), new byte[] {0});
        for (int start = 0; start < 2; start++) {
            try (App app = Demo.startEmpty(day)) {
                assertTrue(app.port() > 0);
            }
        }
        assertEquals(1, backups(day));
    }
}
