package org.skeinday.standing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The order of a contest: the longer score first; equal ones by their best single time, then the next, then tied. */
public final class Standings {
    /**
     * One entry's place.
     *
     * @param place 1, 2 …; the same for a tie; 0 for an entry without a time, which comes last
     */
    public record Placed(String entry, int place, Optional<Long> countedMs) {}

    private record Line(String entry, Optional<Long> counted, List<Long> times) {}

    private Standings() {}

    /** Orders the entries by their official times in ms. */
    public static List<Placed> order(Map<String, List<Long>> officialMsByEntry, ScoreRule rule) {
        List<Line> lines = new ArrayList<>();
        officialMsByEntry.forEach((entry, times) -> lines.add(new Line(
                entry,
                rule.countedMs(times),
                times.stream().sorted(Comparator.reverseOrder()).toList())));
        lines.sort(Comparator.comparing(Standings::better).thenComparing(Line::entry));
        List<Placed> placed = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            Line line = lines.get(i);
            boolean tied = i > 0 && better(lines.get(i - 1)).compareTo(better(line)) == 0;
            int place = line.counted().isEmpty() ? 0 : tied ? placed.get(i - 1).place() : i + 1;
            placed.add(new Placed(line.entry(), place, line.counted()));
        }
        return List.copyOf(placed);
    }

    /** Smaller is better, so that the best come first. */
    private record Key(long counted, List<Long> times) implements Comparable<Key> {
        @Override
        public int compareTo(Key other) {
            int by = Long.compare(other.counted, counted);
            for (int i = 0; by == 0 && i < Math.max(times.size(), other.times.size()); i++) {
                by = Long.compare(at(other.times, i), at(times, i));
            }
            return by;
        }

        private static long at(List<Long> times, int i) {
            return i < times.size() ? times.get(i) : -1;
        }
    }

    private static Key better(Line line) {
        return new Key(line.counted().orElse(-1L), line.times());
    }
}
