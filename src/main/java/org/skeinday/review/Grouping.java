package org.skeinday.review;

import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;

/** By what flights are put together. */
public enum Grouping {
    DAY("day", (row, start) -> named(row.day().toString())),
    SEASON("season", (row, start) -> named(Season.of(row.day(), start).words())),
    EVENT("event", (row, start) -> row.flown().event()),
    MODEL("model", (row, start) -> row.flown().model()),
    BATCH("batch", (row, start) -> row.flown().batch()),
    MOTOR("motor", (row, start) -> row.flown().motor());

    private static final Comparator<FlightRow> AS_FLOWN =
            Comparator.comparingLong((FlightRow row) -> row.flight().atMs()).thenComparing(FlightRow::id);

    private final String word;
    private final BiFunction<FlightRow, MonthDay, @Nullable Named> key;

    Grouping(String word, BiFunction<FlightRow, MonthDay, @Nullable Named> key) {
        this.word = word;
        this.key = key;
    }

    private static Named named(String word) {
        return new Named(word, word);
    }

    public String word() {
        return word;
    }

    /**
     * In the order of their first flights, flights in the order in which they were flown; those of which it is not known
     * come last, as one group.
     *
     * @param seasonStart the day on which a season begins
     */
    public List<FlightGroup> of(List<FlightRow> rows, MonthDay seasonStart) {
        Map<Named, List<FlightRow>> groups = new LinkedHashMap<>();
        List<FlightRow> unknown = new ArrayList<>();
        rows.stream().sorted(AS_FLOWN).forEach(row -> {
            Named thing = key.apply(row, seasonStart);
            (thing == null ? unknown : groups.computeIfAbsent(thing, k -> new ArrayList<>())).add(row);
        });
        List<FlightGroup> all = new ArrayList<>();
        groups.forEach((thing, flights) -> all.add(new FlightGroup(thing, flights)));
        if (!unknown.isEmpty()) {
            all.add(new FlightGroup(null, unknown));
        }
        return all;
    }
}
