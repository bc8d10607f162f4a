package org.skeinday.review;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which flights are looked at; null asks nothing. A flight of which it is not known does not match what is asked.
 *
 * @param from first day, {@code to} last day, both included
 * @param event and the others: ids
 * @param valid whether it may enter averages
 */
public record FlightFilter(
        @Nullable LocalDate from,
        @Nullable LocalDate to,
        @Nullable String event,
        @Nullable String model,
        @Nullable String batch,
        @Nullable String motor,
        @Nullable String winder,
        @Nullable Boolean valid) {
    public FlightFilter {
        if (from != null && to != null && to.isBefore(from)) {
            throw new IllegalArgumentException(
                    "The last day must not lie before the first, but they were " + from + " and " + to);
        }
    }

    /** In the order in which they were given. */
    public List<FlightRow> of(List<FlightRow> rows) {
        return rows.stream().filter(this::holds).toList();
    }

    public boolean holds(FlightRow row) {
        FlightContext flown = row.flown();
        return (from == null || !row.day().isBefore(from))
                && (to == null || !row.day().isAfter(to))
                && is(event, flown.event())
                && is(model, flown.model())
                && is(batch, flown.batch())
                && is(motor, flown.motor())
                && is(winder, flown.winder())
                && (valid == null || valid == row.counts());
    }

    private static boolean is(@Nullable String asked, @Nullable Named thing) {
        return asked == null || (thing != null && thing.id().equals(asked));
    }
}
