package org.skeinday.review;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.attempt.Part;

/** Pictures of how the day went: planned against actual durations, and the air of the hall. */
public final class DayPictures {
    private static final double MS_PER_HOUR = 3_600_000;

    private DayPictures() {}

    /** Planned against actual in one series for each part; the line is where both are alike. */
    public static Picture durations(List<FlightRow> flights, List<Finding> findings) {
        List<Picture.Series> series = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        double most = 0;
        for (Part part : Part.values()) {
            List<Picture.Point> points = new ArrayList<>();
            for (FlightRow row : LostTime.with(part, flights)) {
                StepTime step = row.step(part).orElseThrow();
                double planned = orZero(step.plannedSeconds());
                double actual = orZero(step.actualSeconds());
                points.add(new Picture.Point(planned, actual, row.id(), true));
                rows.add(List.of(part.word(), Findings.number(planned, 0), Findings.number(actual, 0)));
                most = Math.max(most, Math.max(planned, actual));
            }
            if (!points.isEmpty()) {
                series.add(new Picture.Series(part.word(), points, false));
            }
        }
        return new Picture(
                lost(findings, series.isEmpty()),
                new Axis("planned", "s"),
                new Axis("actual", "s"),
                series,
                null,
                most == 0 ? null : new Picture.Fit("as planned", List.of(at(0), at(most))),
                List.of("part", "planned (s)", "actual (s)"),
                rows);
    }

    private static Picture.Point at(double both) {
        return new Picture.Point(both, both, "", true);
    }

    private static double orZero(@org.jspecify.annotations.Nullable Long seconds) {
        return seconds == null ? 0 : seconds;
    }

    private static String lost(List<Finding> findings, boolean empty) {
        String plain = "Planned against actual durations";
        return empty
                ? plain + ": nothing was noted yet"
                : findings.stream()
                        .filter(f -> f.kind() == Finding.Kind.LOST_TIME && f.isEvidence())
                        .findFirst()
                        .map(Finding::sentence)
                        .orElse(plain + ". No evidence yet that any part takes another time than planned.");
    }

    /** Temperature over the hours since the first flight of those that are given. */
    public static Picture temperature(List<FlightRow> flights) {
        List<FlightRow> measured =
                flights.stream().filter(r -> r.conditions().celsius() != null).toList();
        long start = measured.stream().mapToLong(r -> r.flight().atMs()).min().orElse(0);
        List<Picture.Point> points = measured.stream()
                .map(r -> new Picture.Point(
                        (r.flight().atMs() - start) / MS_PER_HOUR,
                        java.util.Objects.requireNonNull(r.conditions().celsius()),
                        r.id(),
                        true))
                .toList();
        List<List<String>> rows = measured.stream()
                .map(r -> List.of(
                        Findings.number((r.flight().atMs() - start) / MS_PER_HOUR, 2),
                        Findings.number(
                                java.util.Objects.requireNonNull(r.conditions().celsius()), 1),
                        humidity(r.conditions())))
                .toList();
        return new Picture(
                span(points),
                new Axis("since the first flight", "h"),
                new Axis("temperature", "°C"),
                points.isEmpty() ? List.of() : List.of(new Picture.Series("temperature", points, true)),
                null,
                null,
                List.of("hours", "temperature (°C)", "humidity (%)"),
                rows);
    }

    private static String humidity(Conditions conditions) {
        Double percent = conditions.humidity();
        return percent == null ? "–" : Findings.number(percent, 0);
    }

    private static String span(List<Picture.Point> points) {
        var all = points.stream().mapToDouble(Picture.Point::y).summaryStatistics();
        return points.isEmpty()
                ? "Conditions over the day: nobody measured them yet"
                : "The hall had " + Findings.number(all.getMin(), 1) + " to " + Findings.number(all.getMax(), 1)
                        + " °C over the day";
    }
}
