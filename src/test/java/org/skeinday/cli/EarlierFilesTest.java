package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.exchange.DayFiles;

/** Files of a program of before its classes and their words were renamed are taken in as they were. */
class EarlierFilesTest {
    private static final Path BUNDLE = Path.of("src/test/resources/earlier/bundle.json");

    @TempDir
    Path root;

    @Test
    void a_bundle_of_an_earlier_program_comes_out_as_it_came_in() throws Exception {
        Map<String, String> texts = OneFile.read(BUNDLE);
        Exchange.Taken taken =
                Exchange.take(root.resolve("day"), texts, 0, Clock.systemDefaultZone(), new SecureRandom());
        assertEquals(List.of(), taken.errors());
        DayFiles.Written out = Exchange.write(root.resolve("day"), new TakenOut.Choice(), Clock.systemDefaultZone());
        Path again = root.resolve("bundle.json");
        OneFile.write(again, "the whole record", out.texts());
        assertEquals(Files.readString(BUNDLE), Files.readString(again));
    }
}
