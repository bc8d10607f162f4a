package org.skeinday.attempt;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.winding.WindBegun;

/** Flights that were logged, beside winds that the program saw: which of them are flights of which of these. */
public final class LoggedFlights {
    /** An evening's winds may be logged at its end. */
    private static final long SAME_EVENING_MS = 12 * 3_600_000L;

    private LoggedFlights() {}

    /**
     * The wind of each flight that has one, by the flight's id: each flight takes the earliest wind of its motor in the
     * twelve hours before it that no other flight has taken.
     *
     * @param winds outside any attempt, in the order in which they were begun
     */
    public static Map<String, WindBegun> winds(List<WindBegun> winds, List<PracticeFlown> flights) {
        Map<String, Deque<WindBegun>> free = new HashMap<>();
        winds.forEach(
                w -> free.computeIfAbsent(w.motorId(), m -> new ArrayDeque<>()).add(w));
        Map<String, WindBegun> taken = new HashMap<>();
        flights.stream()
                .sorted(Comparator.comparingLong(PracticeFlown::flownAtMs).thenComparing(PracticeFlown::id))
                .forEach(flight -> {
                    Deque<WindBegun> ofMotor = free.getOrDefault(flight.motorId(), new ArrayDeque<>());
                    while (!ofMotor.isEmpty() && ofMotor.element().atMs() < flight.flownAtMs() - SAME_EVENING_MS) {
                        ofMotor.remove();
                    }
                    if (!ofMotor.isEmpty() && ofMotor.element().atMs() <= flight.flownAtMs()) {
                        taken.put(flight.id(), ofMotor.remove());
                    }
                });
        return taken;
    }
}
