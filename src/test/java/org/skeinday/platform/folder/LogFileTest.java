package org.skeinday.platform.folder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The log in the data folder: how large it grows, and what it never holds. */
class LogFileTest {
    private static final Logger LOG = LoggerFactory.getLogger(LogFileTest.class);

    @TempDir
    Path data;

    private List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(data.resolve(LogFile.FOLDER))) {
            return files.sorted().toList();
        }
    }

    @Test
    void all_files_together_stay_below_50_mb() {
        assertTrue((LogFile.OLD_FILES + 1) * LogFile.FILE_BYTES + LogFile.FILE_BYTES <= 50_000_000L);
    }

    @Test
    void old_lines_go_when_new_ones_come() throws Exception {
        int lines = 0;
        try (LogFile log = LogFile.in(data, 2_000)) {
            long until = System.nanoTime() + 5_000_000_000L; // a file is looked at from time to time only
            while (files().size() < LogFile.OLD_FILES + 1 && System.nanoTime() < until) {
                LOG.warn("line {} {}", ++lines, "x".repeat(500));
                Thread.sleep(1);
            }
            for (int i = 0; i < 100; i++) {
                LOG.warn("line {} {}", ++lines, "x".repeat(500));
                Thread.sleep(1);
            }
        }
        assertEquals(LogFile.OLD_FILES + 1, files().size());
        String all = "";
        for (Path file : files()) {
            all += Files.readString(file);
        }
        assertTrue(all.contains("line " + lines + " "), "the newest");
        assertFalse(all.contains("line 1 "), "and no more the oldest");
    }

    @Test
    void an_error_is_told_by_where_it_came_from_and_never_by_what_it_says() throws Exception {
        try (LogFile log = LogFile.in(data, LogFile.FILE_BYTES)) {
            LOG.error(
                    "Error {} at {}",
                    "12ab",
                    "POST /practice",
                    new IllegalStateException(
                            "typed: Mattis", new UncheckedIOException("pin 123456", new IOException("Oda"))));
        }
        String text = Files.readString(data.resolve("logs/skeinday.log"));
        assertTrue(text.contains("Error 12ab at POST /practice") && text.contains("IllegalStateException"), text);
        assertTrue(text.contains("by java.io.UncheckedIOException") && text.contains("LogFileTest"), text);
        for (String secret : List.of("Mattis", "123456", "Oda")) {
            assertFalse(text.contains(secret), text);
        }
    }
}
