package org.skeinday.attempt;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/** Flights that were logged, beside winds that the program saw: which of them are winds of their own. */
public final class LoggedFlights {
    /** An evening's winds may be logged at its end. */
    private static final long SAME_EVENING_MS = 12 * 3_600_000L;

    private LoggedFlights() {}

    /**
     * How many flights of one motor no wind was seen for: each flight takes the earliest wind of the twelve hours before
     * it that no other flight has taken.
     *
     * @param windsMs beginnings of winds outside any attempt, epoch ms, ascending
     * @param flightsMs flights, epoch ms, ascending
     */
    public static int withoutWind(List<Long> windsMs, List<Long> flightsMs) {
        Deque<Long> free = new ArrayDeque<>(windsMs);
        int without = 0;
        for (long flown : flightsMs) {
            while (!free.isEmpty() && free.peek() < flown - SAME_EVENING_MS) {
                free.poll();
            }
            if (!free.isEmpty() && free.peek() <= flown) {
                free.poll();
            } else {
                without++;
            }
        }
        return without;
    }
}
