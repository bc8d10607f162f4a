package org.skeinday.exchange;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the words over a column most likely mean. A guess, and never more than that. */
final class HeaderGuess {
    private static final Pattern UNIT = Pattern.compile("(.*?)\\s*[(\\[]([^)\\]]*)[)\\]]\\s*");

    /** Other words that people write (common practice); the first column of these that the file has. */
    private static final Map<String, List<String>> ALSO = Map.ofEntries(
            Map.entry("date", List.of("flown", "day")),
            Map.entry("day", List.of("flown", "day")),
            Map.entry("when", List.of("flown")),
            Map.entry("clock", List.of("flown")),
            Map.entry("time of day", List.of("flown")),
            Map.entry("duration", List.of("time")),
            Map.entry("flight time", List.of("time")),
            Map.entry("seconds", List.of("time")),
            Map.entry("turns", List.of("crank turns")),
            Map.entry("winds", List.of("crank turns")),
            Map.entry("gear", List.of("ratio")),
            Map.entry("gear ratio", List.of("ratio")),
            Map.entry("max torque", List.of("stop torque")),
            Map.entry("peak torque", List.of("stop torque")),
            Map.entry("torque", List.of("launch torque")),
            Map.entry("backed off", List.of("back off")),
            Map.entry("turns left", List.of("remaining")),
            Map.entry("turns remaining", List.of("remaining")),
            Map.entry("left", List.of("remaining")),
            Map.entry("notes", List.of("note")),
            Map.entry("comment", List.of("note")),
            Map.entry("comments", List.of("note")),
            Map.entry("remarks", List.of("note")),
            Map.entry("aircraft", List.of("model")),
            Map.entry("tag", List.of("motor", "tag")),
            Map.entry("rubber", List.of("motor", "batch")),
            Map.entry("contest", List.of("event")),
            Map.entry("competition", List.of("event")));

    /** So many letters may differ from a column's word, of five or more. */
    private static final int SLIPS = 1;

    private static final int LONG_ENOUGH = 5;

    private HeaderGuess() {}

    /** By place. A column is guessed once, but for a day and a clock time: both are the moment. */
    static Map<Integer, ColumnMapping.Meaning> of(List<Column> known, List<String> header) {
        Map<Integer, ColumnMapping.Meaning> meanings = new HashMap<>();
        for (int place = 0; place < header.size(); place++) {
            int at = place;
            meaning(known, header.get(place))
                    .filter(m -> m.column().equals("flown")
                            || meanings.values().stream()
                                    .noneMatch(o -> o.column().equals(m.column())))
                    .ifPresent(m -> meanings.put(at, m));
        }
        return meanings;
    }

    private static Optional<ColumnMapping.Meaning> meaning(List<Column> known, String typed) {
        Matcher parts = UNIT.matcher(typed.strip());
        boolean named = parts.matches();
        String words = (named ? parts.group(1) : typed)
                .strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\s_-]+", " ");
        return column(known, words).map(column -> {
            String unit = named ? parts.group(2).strip() : "";
            boolean taken = !unit.isEmpty() && column.refuses(unit).isEmpty();
            return new ColumnMapping.Meaning(column.name(), taken ? unit : "");
        });
    }

    private static Optional<Column> column(List<Column> known, String words) {
        return named(known, words)
                .or(() -> ALSO.getOrDefault(words, List.of()).stream()
                        .flatMap(name -> named(known, name).stream())
                        .findFirst())
                .or(() -> known.stream()
                        .filter(c -> words.length() >= LONG_ENOUGH && Nearest.distance(words, c.name()) <= SLIPS)
                        .findFirst());
    }

    private static Optional<Column> named(List<Column> known, String words) {
        return known.stream().filter(c -> c.name().equals(words)).findFirst();
    }
}
