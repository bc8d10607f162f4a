package org.skeinday.review.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.skeinday.review.Figure;
import org.skeinday.review.FlightRow;
import org.skeinday.units.UnitSystem;

/** Flights as lines of a table, the last first: every figure that one of them has. */
final class FlightTable {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ROOT);
    private static final int A_PAGE = 50;

    /** What counts stands beside the flight, where it was flown at the end. */
    private static final List<Figure> ORDER = Arrays.stream(Figure.values())
            .sorted(Comparator.comparingInt(FlightTable::place))
            .toList();

    private final ZoneId zone;
    private final UnitSystem units;

    FlightTable(ZoneId zone, UnitSystem units) {
        this.zone = zone;
        this.units = units;
    }

    private static int place(Figure figure) {
        return switch (figure) {
            case TIME -> 0;
            case EVENT, ENTRY -> 2;
            default -> 1;
        };
    }

    /** What a flight is called: when it was flown. */
    static String label(FlightRow row, ZoneId zone) {
        long at = row.flight().atMs();
        return at == 0
                ? row.day().toString()
                : WHEN.format(Instant.ofEpochMilli(at).atZone(zone));
    }

    static String address(FlightRow row) {
        return "/evening/flight/" + row.id();
    }

    EveningView.Flights of(List<FlightRow> flights, EveningQuery query, Set<Figure> leftOut) {
        List<FlightRow> lastFirst = new ArrayList<>(flights);
        Collections.reverse(lastFirst);
        int page = query.page();
        int from = Math.min(page * A_PAGE, lastFirst.size());
        int to = Math.min(from + A_PAGE, lastFirst.size());
        List<FlightRow> shown = lastFirst.subList(from, to);
        List<Figure> figures = figures(shown, leftOut);
        return new EveningView.Flights(
                figures.stream().map(Figure::words).toList(),
                shown.stream().map(r -> row(r, figures)).toList(),
                count(lastFirst.size(), from, to),
                page == 0
                        ? ""
                        : query.with(EveningQuery.PAGE, page == 1 ? "" : String.valueOf(page - 1))
                                        .address("/evening") + "#flights",
                to == lastFirst.size()
                        ? ""
                        : query.with(EveningQuery.PAGE, String.valueOf(page + 1))
                                        .address("/evening") + "#flights");
    }

    private static String count(int all, int from, int to) {
        return to - from == all
                ? all == 1 ? "1 flight" : all + " flights"
                : "Flights " + (from + 1) + " to " + to + " of " + all + ", the last first";
    }

    private List<Figure> figures(List<FlightRow> shown, Set<Figure> leftOut) {
        Set<Figure> out = EnumSet.of(Figure.DAY);
        out.addAll(leftOut);
        return ORDER.stream()
                .filter(f -> !out.contains(f))
                .filter(f -> shown.stream().anyMatch(r -> f.of(r, units).isPresent()))
                .toList();
    }

    private EveningView.Row row(FlightRow row, List<Figure> figures) {
        return new EveningView.Row(
                row.id(),
                label(row, zone),
                address(row),
                figures.stream().map(f -> f.of(row, units).orElse("")).toList(),
                !row.counts());
    }
}
