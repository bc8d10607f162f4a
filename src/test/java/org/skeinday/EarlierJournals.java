package org.skeinday;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.skeinday.platform.record.Json;

/** Journals that a program of before wrote, each with the tables that it had made of them. */
public final class EarlierJournals {
    private static final Path JOURNALS = Path.of("src/test/resources/earlier/journals.txt.gz");
    private static final String NEXT_FILE = "=== ";

    /** Text by day and name of file. */
    private static final Map<String, Map<String, String>> DAYS = read();

    private EarlierJournals() {}

    private static Map<String, Map<String, String>> read() {
        Map<String, Map<String, String>> days = new TreeMap<>();
        try (InputStream in = new GZIPInputStream(Files.newInputStream(JOURNALS))) {
            String all = "\n" + new String(in.readAllBytes(), StandardCharsets.UTF_8);
            for (String part : all.substring(1 + NEXT_FILE.length()).split("\n" + NEXT_FILE, -1)) {
                int end = part.indexOf('\n');
                String[] place = part.substring(0, end).split("/", -1);
                String text = part.substring(end + 1);
                days.computeIfAbsent(place[0], d -> new TreeMap<>())
                        .put(place[1], text.endsWith("\n") ? text : text + "\n");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return days;
    }

    public static Stream<String> days() {
        return DAYS.keySet().stream();
    }

    /** Those that together hold the most kinds of facts. @param most so many of them */
    public static Stream<String> fullest(int most) {
        Map<String, Set<String>> left = new TreeMap<>();
        days().forEach(day -> left.put(day, kinds(day)));
        List<String> chosen = new ArrayList<>();
        while (chosen.size() < most) {
            String next = left.entrySet().stream()
                    .max(Comparator.comparingInt(day -> day.getValue().size()))
                    .orElseThrow()
                    .getKey();
            chosen.add(next);
            Set<String> seen = Set.copyOf(left.get(next));
            left.values().forEach(kinds -> kinds.removeAll(seen));
        }
        return chosen.stream();
    }

    /** Kinds of facts in one of them. */
    static Set<String> kinds(String day) {
        Set<String> kinds = new TreeSet<>();
        for (String line : text(day, "journal.jsonl").lines().toList()) {
            try {
                Json.MAPPER
                        .readTree(line)
                        .path("facts")
                        .forEach(fact -> kinds.add(fact.path("kind").asText()));
            } catch (JsonProcessingException e) {
                throw new UncheckedIOException(e);
            }
        }
        return kinds;
    }

    static String text(String day, String file) {
        return DAYS.get(day).get(file);
    }

    /** The data folder of one day as it was, without a database. */
    public static Path into(Path folder, String day) throws IOException {
        Files.createDirectories(folder);
        for (String file : List.of("journal.jsonl", "people.json", "skeinday-folder.txt")) {
            Files.writeString(folder.resolve(file), text(day, file));
        }
        return folder;
    }
}
