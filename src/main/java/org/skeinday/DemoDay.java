package org.skeinday;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.TreeMap;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.FileText;
import org.skeinday.platform.record.Answer;

/** Loads the invented event through the same importer as a coach's own files, moved so that it begins soon. */
final class DemoDay {
    /** When the first window opens in the files. */
    private static final LocalDateTime FIRST_WINDOW = LocalDateTime.of(2026, 5, 9, 10, 0);

    private static final int OPENS_IN_MINUTES = 20;

    private DemoDay() {}

    static void load(Path folder, Clock clock, SecureRandom random) throws IOException {
        LocalDateTime opens =
                LocalDateTime.now(clock).plusMinutes(OPENS_IN_MINUTES).truncatedTo(ChronoUnit.MINUTES);
        long shift = Duration.between(FIRST_WINDOW, opens).toMinutes();
        Answer answer = Commands.take(folder, files(), shift, clock, random);
        if (!(answer instanceof Answer.Saved)) {
            throw new IOException("The demo could not be loaded: " + answer);
        }
    }

    private static Map<String, String> files() throws IOException {
        Map<String, String> texts = new TreeMap<>();
        for (String name : DayFiles.known()) {
            try (InputStream in = DemoDay.class.getResourceAsStream("/demo-data/" + name)) {
                if (in != null) {
                    texts.put(name, FileText.decode(in.readAllBytes()));
                }
            }
        }
        return texts;
    }
}
