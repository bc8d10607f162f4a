package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Usual;

/** What is usual of one model's flights, each held against the others and never against itself. */
public final class UsualFlights {
    private final List<Double> seconds;
    private final List<Double> speeds;

    private UsualFlights(List<Double> seconds, List<Double> speeds) {
        this.seconds = seconds;
        this.speeds = speeds;
    }

    /** @param ofModel in any order, whether they count or not: one slip of the keys does not move a median */
    public static UsualFlights of(List<Flight> ofModel) {
        return new UsualFlights(
                sorted(ofModel.stream().map(UsualFlights::seconds).toList()),
                sorted(ofModel.stream().map(UsualFlights::speed).toList()));
    }

    /** Of all flights but this one, which may be among them. */
    public Usual without(@Nullable Flight flight) {
        return Usual.of(
                without(seconds, flight == null ? Optional.empty() : seconds(flight)),
                without(speeds, flight == null ? Optional.empty() : speed(flight)));
    }

    private static Optional<Double> seconds(Flight flight) {
        return Optional.ofNullable(flight.timeMs()).map(ms -> ms / 1000.0);
    }

    private static Optional<Double> speed(Flight flight) {
        return Optional.ofNullable(flight.told(null, null, Usual.UNKNOWN).speed());
    }

    private static List<Double> sorted(List<Optional<Double>> values) {
        return values.stream().flatMap(Optional::stream).sorted().toList();
    }

    private static List<Double> without(List<Double> sorted, Optional<Double> own) {
        int at = own.map(value -> Collections.binarySearch(sorted, value)).orElse(-1);
        if (at < 0) {
            return sorted;
        }
        List<Double> others = new ArrayList<>(sorted);
        Objects.requireNonNull(others.remove(at));
        return others;
    }
}
