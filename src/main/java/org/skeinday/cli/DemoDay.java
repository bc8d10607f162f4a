package org.skeinday.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.FileText;

/** Loads the invented event through the same importer as a coach's own files, moved so that it begins soon. */
public final class DemoDay {
    /** When the first window opens in the files. */
    private static final LocalDateTime FIRST_WINDOW = LocalDateTime.of(2026, 5, 9, 10, 0);

    private static final int OPENS_IN_MINUTES = 20;
    private static final int DAY_MINUTES = 24 * 60;
    private static final Pattern MOMENT = Pattern.compile("\\d{4}-\\d{2}-\\d{2} \\d{2}:\\d{2}");
    private static final DateTimeFormatter WRITTEN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    private DemoDay() {}

    public static void load(Path folder, Clock clock, SecureRandom random) throws IOException {
        LocalDateTime opens =
                LocalDateTime.now(clock).plusMinutes(OPENS_IN_MINUTES).truncatedTo(ChronoUnit.MINUTES);
        long shift = Duration.between(FIRST_WINDOW, opens).toMinutes();
        Map<String, String> files = files();
        int byTheClock = Math.floorMod(shift, DAY_MINUTES);
        files.computeIfPresent("flights.csv", (name, text) -> inTheEvening(text, byTheClock));
        files.computeIfPresent("notes.csv", (name, text) -> inTheEvening(text, byTheClock));
        Exchange.Taken taken = Exchange.take(folder, files, shift, clock, random);
        if (!taken.errors().isEmpty()) {
            throw new IOException(
                    "The demo could not be loaded: " + taken.errors().get(0).text());
        }
    }

    /** Practice was in the evening, whatever the hour at which somebody starts the demo. */
    private static String inTheEvening(String flights, int minutes) {
        return MOMENT.matcher(flights)
                .replaceAll(found -> LocalDateTime.parse(found.group(), WRITTEN)
                        .minusMinutes(minutes)
                        .format(WRITTEN));
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
