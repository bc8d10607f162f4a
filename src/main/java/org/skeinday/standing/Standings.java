package org.skeinday.standing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The order of a contest: the better score first; equal ones by the rule for ties; a place is shared, the next left out. */
public final class Standings {
    /**
     * One entry's place.
     *
     * @param place 1, 2 …; the same for a tie; 0 for an entry without a time, which comes last
     */
    public record Placed(String entry, int place, Optional<Long> countedMs) {}

    /**
     * What an entry has to be ordered by.
     *
     * @param scoreMs empty for no score
     * @param singlesMs its official times, in any order
     */
    public record Scored(String entry, Optional<Long> scoreMs, List<Long> singlesMs) {}

    private Standings() {}

    /** The longer score first; ties by the rule. */
    public static List<Placed> order(Map<String, List<Long>> officialMsByEntry, ScoreRule rule, TieRule ties) {
        List<Scored> scored = new ArrayList<>();
        officialMsByEntry.forEach((entry, times) -> scored.add(new Scored(entry, rule.countedMs(times), times)));
        return order(scored, ties, Better.LONGER);
    }

    /** The better score first; ties by the rule; those without a score last, by name, without a place. */
    public static List<Placed> order(List<Scored> entries, TieRule ties, Better better) {
        Comparator<Scored> byMerit = byMerit(ties, better);
        List<Scored> lines =
                entries.stream().sorted(byMerit.thenComparing(Scored::entry)).toList();
        List<Placed> placed = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            Scored line = lines.get(i);
            boolean tied = i > 0 && byMerit.compare(lines.get(i - 1), line) == 0;
            int place = line.scoreMs().isEmpty() ? 0 : tied ? placed.get(i - 1).place() : i + 1;
            placed.add(new Placed(line.entry(), place, line.scoreMs()));
        }
        return List.copyOf(placed);
    }

    private static Comparator<Scored> byMerit(TieRule ties, Better better) {
        return (a, b) -> {
            if (a.scoreMs().isEmpty() || b.scoreMs().isEmpty()) {
                return Boolean.compare(a.scoreMs().isEmpty(), b.scoreMs().isEmpty());
            }
            int by = better.first().compare(a.scoreMs().get(), b.scoreMs().get());
            return by != 0 ? by : bySingles(best(a, ties, better), best(b, ties, better), better);
        };
    }

    private static List<Long> best(Scored entry, TieRule ties, Better better) {
        return entry.singlesMs().stream()
                .sorted(better.first())
                .limit(ties.singles())
                .toList();
    }

    /** A missing time is the worst. */
    private static int bySingles(List<Long> a, List<Long> b, Better better) {
        for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
            int by = better.first().compare(a.get(i), b.get(i));
            if (by != 0) {
                return by;
            }
        }
        return Integer.compare(b.size(), a.size());
    }
}
