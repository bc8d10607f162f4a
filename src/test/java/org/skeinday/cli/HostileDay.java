package org.skeinday.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.skeinday.exchange.DayFiles;

/** The demo's day with names that would run, break out or be computed wherever somebody forgot to treat them as text. */
public final class HostileDay {
    /** Stands in every name that would run as script; {@code window.ran} tells whether it did. */
    public static final String RUNS = "window.ran=1";

    /** By the demo's own names; the rest of the day stays. */
    public static final Map<String, String> NAMES = Map.ofEntries(
            Map.entry("Saltmarsh Rotor Day", "</title><script>window.ran=1</script>"),
            Map.entry("Saltmarsh Practice Evening", "Practice \"'><svg onload=window.ran=1>"),
            Map.entry("Saltmarsh Hall", "Hall${7*7}{{7*7}}#{7*7}<%=7*7%>"),
            Map.entry("Curlew", "<script>window.ran=1</script>"),
            Map.entry("Avocet", "\" onfocus=\"window.ran=1\" autofocus=\""),
            Map.entry("Plover", "=HYPERLINK(\"http://elsewhere.example\")"),
            Map.entry("Dunlin", "-2+3"),
            Map.entry("Knot", "@SUM(1+1)"),
            Map.entry("Whimbrel", "\u05d0\u05d1\u05d2 \u0645\u0631\u062d\u0628\u0627"),
            Map.entry("Reedbank Rotors", "Team <b>&amp;</b> \"Reed\""),
            Map.entry("Sedgeway Club", "+Sedge 😀👩‍🚀"),
            Map.entry("Reed One", "'><img src=x onerror=window.ran=1>"),
            Map.entry("Reed Two", "javascript:window.ran=1"),
            Map.entry("A3", "=A3"),
            Map.entry("B2", "<i>B2"),
            Map.entry("Mattis", "<img src=x onerror=window.ran=1>"),
            Map.entry("Oda", "';window.ran=1;//"),
            Map.entry("Ines", "O'Inés \\u003cscript\\u003e e\u0301"),
            Map.entry("Tomek", "-Tomek"));

    private HostileDay() {}

    /** Makes it in a new data folder; its first window opens in 20 minutes. */
    public static Path into(Path folder) throws IOException {
        Map<String, String> texts = new TreeMap<>();
        for (String name : DayFiles.known()) {
            try (InputStream in = HostileDay.class.getResourceAsStream("/demo-data/" + name)) {
                if (in != null) {
                    texts.put(name, renamed(new String(in.readAllBytes(), StandardCharsets.UTF_8)));
                }
            }
        }
        LocalDateTime opens = LocalDateTime.now(Clock.systemDefaultZone()).plusMinutes(20);
        long shift = Duration.between(LocalDateTime.of(2026, 5, 9, 10, 0), opens.truncatedTo(ChronoUnit.MINUTES))
                .toMinutes();
        Exchange.Taken taken = Exchange.take(folder, texts, shift, Clock.systemDefaultZone(), new SecureRandom());
        if (!taken.errors().isEmpty()) {
            throw new AssertionError(taken.errors().get(0).text());
        }
        return folder;
    }

    private static String renamed(String file) {
        return file.lines()
                .map(line ->
                        Arrays.stream(line.split(",", -1)).map(HostileDay::cell).collect(Collectors.joining(",")))
                .collect(Collectors.joining("\n", "", "\n"));
    }

    private static String cell(String cell) {
        List<String> words = Arrays.stream(cell.split(" \\| ", -1))
                .map(word -> NAMES.getOrDefault(word, word))
                .toList();
        return "\"" + String.join(" | ", words).replace("\"", "\"\"") + "\"";
    }
}
