package org.skeinday.review;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Flights that have something in common.
 *
 * @param of what, null where it is not known
 * @param flights at least one, in the order in which they were flown
 */
public record FlightGroup(@Nullable Named of, List<FlightRow> flights) {
    public FlightGroup {
        flights = List.copyOf(flights);
        if (flights.isEmpty()) {
            throw new IllegalArgumentException("A group must have at least 1 flight, but had none");
        }
    }

    public String name() {
        return of == null ? "not known" : of.name();
    }
}
