package org.skeinday.review;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.skeinday.units.UnitSystem;

/**
 * Two to four flights beside each other. A line that no flight knows is left out.
 *
 * @param lines in the order of {@link Figure}
 */
public record SideBySide(List<FlightRow> flights, List<Line> lines) {
    public static final int FEWEST = 2;
    public static final int MOST = 4;

    /**
     * One figure of all of them.
     *
     * @param texts as many as flights, each empty where it is not known
     * @param differs whether two that are known read differently; what is not known is no difference
     */
    public record Line(Figure figure, List<Optional<String>> texts, boolean differs) {}

    /** @throws IllegalArgumentException for fewer than two, more than four, or one of them twice */
    public static SideBySide of(List<FlightRow> flights, UnitSystem units) {
        long different = flights.stream().map(FlightRow::id).distinct().count();
        if (flights.size() < FEWEST || flights.size() > MOST || different < flights.size()) {
            throw new IllegalArgumentException("Side by side must be 2 to 4 different flights, but were "
                    + flights.stream().map(FlightRow::id).toList());
        }
        List<Line> lines = Arrays.stream(Figure.values())
                .map(figure -> line(figure, flights, units))
                .filter(line -> line.texts().stream().anyMatch(Optional::isPresent))
                .toList();
        return new SideBySide(List.copyOf(flights), lines);
    }

    private static Line line(Figure figure, List<FlightRow> flights, UnitSystem units) {
        List<Optional<String>> texts =
                flights.stream().map(flight -> figure.of(flight, units)).toList();
        long known = texts.stream().flatMap(Optional::stream).distinct().count();
        return new Line(figure, texts, known > 1);
    }
}
