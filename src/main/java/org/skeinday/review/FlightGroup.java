package org.skeinday.review;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.Sample;
import org.skeinday.units.FlightTime;

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
            throw new IllegalArgumentException("A group needs at least 1 flight, but had none");
        }
    }

    public String name() {
        return of == null ? "not known" : of.name();
    }

    /** How many may enter averages. */
    public int valid() {
        return (int) flights.stream().filter(FlightRow::isValid).count();
    }

    /** The longest, whatever it says of the model: its time stands as the rules say. */
    public Optional<FlightTime> best() {
        return flights.stream()
                .map(row -> row.flight().timeMs())
                .filter(Objects::nonNull)
                .max(Long::compare)
                .map(FlightTime::new);
    }

    /** Of the valid ones, in seconds. */
    public Optional<Double> medianSeconds() {
        double[] seconds = flights.stream()
                .filter(FlightRow::isValid)
                .map(FlightRow::seconds)
                .filter(Objects::nonNull)
                .mapToDouble(s -> s)
                .toArray();
        return seconds.length == 0
                ? Optional.empty()
                : Optional.of(Sample.of(seconds).median());
    }
}
