package org.skeinday.attempt;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What a landed attempt still waits for before its time is made, and whom, in one line.
 *
 * @param missing places that have neither a time nor a word of the captain's
 * @param differ whether the watches that have one are in doubt
 * @param elsewhere whether the officials' time counts, so that nobody here decides
 */
public record AwaitedWatches(List<Integer> missing, boolean differ, boolean elsewhere) {
    public AwaitedWatches {
        missing = List.copyOf(missing);
    }

    /**
     * @param wanted as many watches as the rules ask for
     * @param differ whether what there is needs a person
     * @param elsewhere whether the officials' time counts
     */
    public static AwaitedWatches of(Timed timed, int wanted, boolean differ, boolean elsewhere) {
        Set<Integer> told = new TreeSet<>(Readings.setAside(timed.judged()));
        Readings.thatCount(timed.readings()).forEach(reading -> told.add(reading.slot()));
        return new AwaitedWatches(
                IntStream.rangeClosed(1, wanted)
                        .filter(slot -> !told.contains(slot))
                        .boxed()
                        .toList(),
                differ,
                elsewhere);
    }

    /** Whether each watch has told what it has: before that nobody who times sees what another has measured. */
    public boolean areAllIn() {
        return missing.isEmpty();
    }

    /** What and who; empty when nothing is waited for. @param who the person at a place, empty where nobody is named */
    public Optional<String> words(IntFunction<String> who) {
        if (missing.isEmpty()) {
            return !differ
                    ? Optional.empty()
                    : Optional.of(
                            elsewhere
                                    ? "the host: our watches are in doubt, and the announced time counts"
                                    : "the captain: the watches are in doubt");
        }
        return Optional.of("the time of "
                + missing.stream()
                        .map(slot -> "watch " + slot + (who.apply(slot).isEmpty() ? "" : ", " + who.apply(slot)))
                        .collect(Collectors.joining(" and of ")));
    }
}
