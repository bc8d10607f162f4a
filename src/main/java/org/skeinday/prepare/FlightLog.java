package org.skeinday.prepare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Function;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.contest.Terms;
import org.skeinday.evidence.Measured;

/** The flight log that rules ask for: whether the flights are there, and each with what must stand in it. */
public final class FlightLog {
    private FlightLog() {}

    /** The last flights that the log takes, the oldest of them first; all when no number is asked for. */
    public static List<PracticeFlown> taken(Terms terms, List<PracticeFlown> flights) {
        List<PracticeFlown> sorted = flights.stream()
                .sorted(Comparator.comparingLong(PracticeFlown::flownAtMs))
                .toList();
        int from = terms.logFlights() == 0 ? 0 : Math.max(0, sorted.size() - terms.logFlights());
        return sorted.subList(from, sorted.size());
    }

    /** What the log still lacks, in words; empty when it is complete. @param when a flight as a person finds it @param measured whether a number of it is there and was measured */
    public static List<String> lacks(
            Terms terms,
            List<PracticeFlown> flights,
            Function<PracticeFlown, String> when,
            BiPredicate<PracticeFlown, Measured> measured) {
        List<String> lacks = new ArrayList<>();
        List<PracticeFlown> taken = taken(terms, flights);
        if (taken.size() < terms.logFlights()) {
            lacks.add("The log must show " + terms.logFlights() + " flights and has " + taken.size() + ".");
        }
        for (PracticeFlown flight : taken) {
            List<String> empty = terms.columnsOfLog().stream()
                    .filter(column -> !has(flight, column, measured))
                    .toList();
            if (!empty.isEmpty()) {
                lacks.add("The flight of " + when.apply(flight) + " has no " + String.join(", ", empty) + ".");
            }
        }
        return lacks;
    }

    private static boolean has(PracticeFlown flight, String column, BiPredicate<PracticeFlown, Measured> measured) {
        return switch (column) {
            case "model" -> flight.modelId() != null;
            case "note" -> flight.note() != null;
            case "motor" -> true; // no flight is kept without it
            default -> of(column).filter(what -> !measured.test(flight, what)).isEmpty();
        };
    }

    /** What a column of the log has the number of; empty for words. */
    public static Optional<Measured> of(String column) {
        return switch (column) {
            case "turns" -> Optional.of(Measured.CRANK_TURNS);
            case "torque" -> Optional.of(Measured.PEAK_TORQUE);
            case "launch" -> Optional.of(Measured.LAUNCH_TORQUE);
            case "remaining" -> Optional.of(Measured.REMAINING);
            case "time" -> Optional.of(Measured.TIME);
            default -> Optional.empty();
        };
    }
}
