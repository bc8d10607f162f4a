package org.skeinday.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.units.UnitSystem;

class ChartTest {
    @ParameterizedTest
    @CsvSource({
        "0, 10, 5, 0 2 4 6 8 10",
        "0, 1, 5, 0.0 0.2 0.4 0.6 0.8 1.0",
        "3.1, 6.2, 5, 3 4 5 6 7",
        "81.3, 118.9, 6, 80 90 100 110 120",
        "-3, 4, 4, -4 -2 0 2 4",
        "-3, 4, 3, -5 0 5",
        "0.1, 0.3, 10, 0.10 0.12 0.14 0.16 0.18 0.20 0.22 0.24 0.26 0.28 0.30",
        "1200, 2050, 3, 1000 1500 2000 2500",
        "7, 7, 4, 5 6 7 8 9",
        "0, 0, 4, -0.4 -0.2 0.0 0.2 0.4"
    })
    void ticks_are_round_numbers_that_hold_everything(double low, double high, int most, String labels) {
        assertEquals(List.of(labels.split(" ")), Ticks.over(low, high, most).labels());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void ticks_of_any_range_hold_it_in_steps_of_1_2_or_5_and_not_too_many(long seed) {
        var random = new SplittableRandom(seed);
        for (int i = 0; i < 2000; i++) {
            double low = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(8) - 3);
            double high = low + random.nextDouble() * Math.pow(10, random.nextInt(8) - 3);
            int most = 2 + random.nextInt(10);
            Ticks ticks = Ticks.over(low, high, most);
            String said = "seed " + seed + ": " + low + " to " + high + " in " + most + ": " + ticks;
            double step = ticks.values().get(1) - ticks.values().get(0);
            int lead = new BigDecimal(ticks.labels().get(1))
                    .subtract(new BigDecimal(ticks.labels().get(0)))
                    .stripTrailingZeros()
                    .unscaledValue()
                    .intValueExact();
            assertTrue(ticks.first() <= low + step * 1e-6 && ticks.last() >= high - step * 1e-6, said);
            assertTrue(List.of(1, 2, 5).contains(lead), said);
            assertTrue(ticks.values().size() - 1 <= most && ticks.values().size() >= 2, said);
            assertTrue(
                    ticks.labels().stream().distinct().count() == ticks.labels().size(), said);
        }
    }

    @Test
    void ticks_of_counts_are_whole() {
        assertEquals(List.of("1", "2", "3", "4", "5"), Ticks.ofWhole(1, 5, 10).labels());
        assertEquals(List.of("1", "2"), Ticks.ofWhole(1, 2, 10).labels());
        assertEquals(List.of("0", "20", "40", "60"), Ticks.ofWhole(1, 45, 3).labels());
    }

    @Test
    void ticks_refuse_what_is_no_range() {
        assertThrows(IllegalArgumentException.class, () -> Ticks.over(2, 1, 5));
        assertThrows(IllegalArgumentException.class, () -> Ticks.over(0, Double.NaN, 5));
    }

    private static List<Picture> pictures() {
        EveningReview evening = new Evening(9, 0, 0, 40, 1, 1, 0, 0.3).at(1);
        List<Finding> findings = evening.findings(UnitSystem.METRIC);
        var flights = new FlightPictures(evening.flights(), findings, UnitSystem.METRIC);
        var nothing = new FlightPictures(List.of(), List.of(), UnitSystem.INCH);
        return List.of(
                flights.timeByUse(),
                flights.timeAgainstLaunchTorque(),
                flights.meanSpeed(),
                flights.shareRemaining(),
                flights.watchesSpread(),
                DayPictures.durations(evening.flights(), findings),
                DayPictures.temperature(evening.flights()),
                nothing.timeByUse(),
                DayPictures.durations(List.of(), List.of()),
                DayPictures.temperature(List.of()));
    }

    private static boolean overlap(Chart.Text one, Chart.Text other) {
        boolean beside = one.left() + one.wide() <= other.left() || other.left() + other.wide() <= one.left();
        boolean above = Math.abs(one.y() - other.y()) >= Chart.FONT;
        return !beside && !above;
    }

    @ParameterizedTest
    @CsvSource({"300, 200", "480, 300", "720, 420", "1100, 500"})
    void no_text_lies_on_another_or_outside(int width, int height) {
        for (Picture picture : pictures()) {
            List<Chart.Text> level = Chart.of(picture, width, height).texts().stream()
                    .filter(t -> !t.turned())
                    .toList();
            for (int i = 0; i < level.size(); i++) {
                Chart.Text text = level.get(i);
                assertTrue(
                        text.left() >= 0 && text.left() + text.wide() <= width && text.y() <= height && text.y() >= 0,
                        picture.title() + ": outside: " + text);
                for (Chart.Text other : level.subList(i + 1, level.size())) {
                    assertFalse(overlap(text, other), picture.title() + ": " + text + " on " + other);
                }
            }
        }
    }

    @Test
    void texts_that_lie_on_each_other_are_seen() {
        assertTrue(overlap(
                new Chart.Text(50, 20, "middle", false, "long words"), new Chart.Text(60, 25, "start", false, "x")));
        assertFalse(overlap(new Chart.Text(50, 20, "end", false, "long"), new Chart.Text(51, 20, "start", false, "x")));
    }

    @Test
    void every_mark_lies_between_the_axes_and_carries_its_flight() {
        Chart chart = Chart.of(pictures().get(1), 720, 420);
        List<Chart.Mark> ofFlights =
                chart.marks().stream().filter(m -> !m.id().isEmpty()).toList();
        assertEquals(45, ofFlights.size());
        assertEquals(45, ofFlights.stream().map(Chart.Mark::id).distinct().count());
        Chart.Line across = chart.lines().get(0);
        Chart.Line up = chart.lines().get(1);
        for (Chart.Mark mark : ofFlights) {
            String[] first = mark.d().substring(1, mark.d().indexOf('L')).split(" ");
            double x = Double.parseDouble(first[0]);
            double y = Double.parseDouble(first[1]);
            assertTrue(x >= across.x1() - 6 && x <= across.x2() + 6, mark.toString());
            assertTrue(y >= up.y1() - 6 && y <= up.y2() + 6, mark.toString());
        }
    }

    @Test
    void a_place_is_where_its_ticks_say() {
        var axis = new Axis("x", "");
        var series = new Picture.Series(
                "s", List.of(new Picture.Point(0, 0, "a", true), new Picture.Point(10, 10, "b", false)), true);
        Chart chart =
                Chart.of(new Picture("t", axis, axis, List.of(series), null, null, List.of(), List.of()), 480, 300);
        Chart.Line across = chart.lines().get(0);
        Chart.Line up = chart.lines().get(1);
        assertEquals(
                String.format("M%.1f %.1fL%.1f %.1f", across.x1(), up.y2(), across.x2(), up.y1()),
                chart.paths().get(0).d());
        assertEquals(
                List.of("black", "white"),
                chart.marks().subList(0, 2).stream().map(Chart.Mark::fill).toList());
    }

    @Test
    void series_are_told_apart_without_colour() {
        List<Picture.Series> series = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            series.add(new Picture.Series("s" + i, List.of(new Picture.Point(1, 1, "p" + i, true)), false));
        }
        var axis = new Axis("x", "");
        Chart chart = Chart.of(new Picture("t", axis, axis, series, null, null, List.of(), List.of()), 480, 300);
        assertEquals(
                4,
                chart.marks().subList(0, 4).stream()
                        .map(Chart.Mark::d)
                        .distinct()
                        .count());
        chart.marks().forEach(m -> assertTrue(List.of("black", "white").contains(m.fill())));
        chart.paths()
                .forEach(p -> assertTrue(List.of("black", "none", "#dddddd").contains(p.stroke())));
    }
}
