package org.skeinday.timing;

import java.util.Comparator;
import java.util.List;
import org.skeinday.units.Preconditions;

/**
 * The server's clock less the device's, in microseconds.
 *
 * @param bound half the delay of the exchange: the true offset is no further away (Cristian 1989)
 */
public record ClockOffset(long offset, long bound) {
    /** How many of the last exchanges are looked at. */
    public static final int FEWEST = 8;

    public static final int MOST = 16;

    public ClockOffset {
        Preconditions.zeroOrMore("A bound", bound, "µs");
    }

    /**
     * Of the last exchanges the fastest, since its bound is the least.
     *
     * @param exchanges as they were made, the newest last; at least one
     * @param last how many of them to look at, 8 to 16
     */
    public static ClockOffset fastest(List<ClockExchange> exchanges, int last) {
        Preconditions.within("The number of the last exchanges", last, FEWEST, MOST);
        return exchanges.subList(Math.max(0, exchanges.size() - last), exchanges.size()).stream()
                .min(Comparator.comparingLong(ClockExchange::delay))
                .orElseThrow(() -> new IllegalArgumentException("There must be an exchange, but there was none"))
                .offset();
    }

    /** Whether both cannot be true of the same two clocks: one was set, or the device slept, in between. */
    public boolean contradicts(ClockOffset other) {
        return Math.abs(offset - other.offset) > bound + other.bound;
    }
}
