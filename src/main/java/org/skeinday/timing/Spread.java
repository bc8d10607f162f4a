package org.skeinday.timing;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.skeinday.timing.WatchReading.Counted;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Sentence;

/** Watches that are further apart than hands are. */
final class Spread {
    private Spread() {}

    /** A sentence naming the watches to ask; empty when the longest and the shortest are at most the limit apart. */
    static Optional<String> doubt(List<Counted> counted, long limitMs) {
        List<Counted> sorted =
                counted.stream().sorted(Comparator.comparing(Counted::time)).toList();
        if (sorted.size() < 2 || apart(sorted.get(0), sorted.get(sorted.size() - 1)) <= limitMs) {
            return Optional.empty();
        }
        List<Counted> far = farFromTheMiddle(sorted, limitMs);
        String limit = ", more than " + new FlightTime(limitMs).seconds(1) + " s. Ask ";
        if (far.isEmpty() || sorted.size() == 2) {
            Counted first = sorted.get(0);
            Counted last = sorted.get(sorted.size() - 1);
            return Optional.of(capital(first.words()) + " and " + last.words() + " are " + seconds(apart(first, last))
                    + " apart" + limit + "both timekeepers before the official time is taken.");
        }
        Counted middle = sorted.get(sorted.size() / 2);
        String each = far.stream()
                .map(w -> w.words() + " is " + seconds(apart(middle, w)) + " "
                        + (w.time().compareTo(middle.time()) > 0 ? "above" : "below"))
                .collect(Collectors.joining(" and "));
        return Optional.of(capital(each) + " the middle, " + middle.words() + limit
                + (far.size() == 1 ? "its timekeeper" : "their timekeepers")
                + " before the official time is taken.");
    }

    /** Of an odd number; an even one has no middle to be far from. */
    private static List<Counted> farFromTheMiddle(List<Counted> sorted, long limitMs) {
        if (sorted.size() % 2 == 0) {
            return List.of();
        }
        Counted middle = sorted.get(sorted.size() / 2);
        return sorted.stream().filter(w -> apart(middle, w) > limitMs).toList();
    }

    private static long apart(Counted a, Counted b) {
        return Math.abs(a.time().millis() - b.time().millis());
    }

    private static String seconds(long ms) {
        return new FlightTime(ms).seconds(2) + " s";
    }

    private static String capital(String words) {
        return Sentence.begin(words);
    }
}
