package org.skeinday.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.Part;
import org.skeinday.evidence.Counts;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.units.UnitSystem;

class FlightRowsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 28);

    private static Flight flight(String id, long at, Long ms, Counts counts) {
        return new Flight(
                id, true, "m", "a", at, 10, 210.0, 3.0, 44.0, null, 7.06155181422604, ms, FlightEvidence.of(counts));
    }

    private static FlightRow row(String id, long at, Long ms, String motor, LocalDate day) {
        Named tag = motor == null ? null : new Named(motor, motor);
        return new FlightRow(
                flight(id, at, ms, Counts.yes()),
                day,
                new FlightContext(null, null, new Named("m", "Swallow"), tag, null, null),
                new Wound("A", 2, 0.85, null, 12.4, 470.0, 1.7),
                new Conditions(18.5, null, null),
                List.of(108_000L, 107_900L),
                List.of());
    }

    private static Optional<String> text(Figure figure, FlightRow row) {
        return figure.of(row, UnitSystem.INCH);
    }

    @Test
    void what_was_not_noted_is_empty_and_what_was_reads_with_its_unit() {
        FlightRow row = row("f1", 0, 108_000L, "A-03", DAY);
        assertEquals(Optional.of("1.00 in·ozf"), text(Figure.LAUNCH_TORQUE, row));
        assertEquals(Optional.of("1:48"), text(Figure.TIME, row));
        assertEquals(Optional.of("15.1 turns/s"), text(Figure.SPEED, row)); // worked case: 15.09
        assertEquals(Optional.of("440"), text(Figure.REMAINING, row));
        assertEquals(Optional.of("0.10 s"), text(Figure.SPREAD, row));
        assertEquals(Optional.of("12 s"), text(Figure.HOLD, row));
        for (Figure figure :
                List.of(Figure.EVENT, Figure.WINDER, Figure.PEAK_TORQUE, Figure.HUMIDITY, Figure.CONTACT)) {
            assertEquals(Optional.empty(), text(figure, row), figure.words());
        }
        FlightRow bare = FlightRow.of(flight("f2", 0, null, Counts.yes()), DAY);
        assertEquals(Optional.empty(), text(Figure.TIME, bare));
        assertEquals(Optional.empty(), text(Figure.SPEED, bare));
        assertEquals(Optional.empty(), bare.forSize());
    }

    @Test
    void validity_says_its_reason_and_the_time_of_contact() {
        Flight flown = flight("f1", 0, 90_000L, Counts.yes());
        var touched = new FlightEvidence(
                true, Counts.leftOut("touched a beam"), Duration.ofMillis(41_500), ValueMarks.NONE, List.of());
        FlightRow row = FlightRow.of(flown.with(touched), DAY);
        assertEquals(Optional.of("left out: touched a beam"), text(Figure.VALID, row));
        assertEquals(Optional.of("after 0:41.5"), text(Figure.CONTACT, row));
    }

    @Test
    void side_by_side_marks_what_differs_and_leaves_out_what_nobody_knows() {
        SideBySide both = SideBySide.of(
                List.of(row("f1", 0, 108_000L, "A-03", DAY), row("f2", 1, 99_000L, null, DAY)), UnitSystem.METRIC);
        assertTrue(line(both, Figure.TIME).differs());
        assertTrue(line(both, Figure.SPEED).differs());
        assertEquals(false, line(both, Figure.MODEL).differs());
        assertEquals(false, line(both, Figure.MOTOR).differs()); // of one it is not known
        assertTrue(both.lines().stream().noneMatch(l -> l.figure() == Figure.HUMIDITY));
    }

    private static SideBySide.Line line(SideBySide of, Figure figure) {
        return of.lines().stream().filter(l -> l.figure() == figure).findFirst().orElseThrow();
    }

    @Test
    void side_by_side_are_two_to_four_different_flights() {
        FlightRow one = row("f1", 0, 108_000L, "A-03", DAY);
        for (List<FlightRow> wrong : List.of(List.of(one), List.of(one, one))) {
            String said = assertThrows(IllegalArgumentException.class, () -> SideBySide.of(wrong, UnitSystem.METRIC))
                    .getMessage();
            assertTrue(said.startsWith("Side by side must be 2 to 4 different flights, but were [f1"), said);
        }
    }

    @Test
    void a_season_begins_on_its_day_and_holds_a_year() {
        Season season = Season.of(DAY, Season.DEFAULT_START);
        assertEquals("2026/27", season.words());
        assertEquals(season, Season.of(LocalDate.of(2027, 8, 31), Season.DEFAULT_START));
        assertEquals(
                "2027/28",
                Season.of(LocalDate.of(2027, 9, 1), Season.DEFAULT_START).words());
        assertEquals("2026", Season.of(DAY, MonthDay.of(1, 1)).words());
        assertEquals(
                "1999/00",
                Season.of(LocalDate.of(2000, 2, 29), Season.DEFAULT_START).words());
    }

    private static List<String> ids(List<FlightRow> rows) {
        return rows.stream().map(FlightRow::id).toList();
    }

    @Test
    void filters_keep_what_is_known_to_match() {
        List<FlightRow> rows = List.of(
                row("f1", 0, 1L, "a3", DAY), row("f2", 1, 2L, null, DAY), row("f3", 2, 3L, "a3", DAY.plusDays(1)));
        assertEquals(List.of("f1", "f2"), ids(new FlightFilter(DAY, DAY, null, null, null, null, null, null).of(rows)));
        assertEquals(
                List.of("f1", "f2", "f3"),
                ids(new FlightFilter(null, null, null, null, null, null, null, null).of(rows)));
        var motor = new FlightFilter(null, null, null, null, null, "a3", null, true);
        assertEquals(List.of("f1", "f3"), ids(motor.of(rows)));
        assertEquals(List.of(), ids(new FlightFilter(null, null, null, null, null, null, null, false).of(rows)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new FlightFilter(DAY, DAY.minusDays(1), null, null, null, null, null, null));
    }

    @Test
    void groups_come_in_the_order_flown_with_the_unknown_last() {
        List<FlightRow> rows = List.of(
                row("f3", 3, 50_000L, "b1", DAY),
                row("f1", 1, 90_000L, null, DAY),
                row("f4", 4, 70_000L, "b1", DAY),
                row("f2", 2, null, "a3", DAY));
        List<FlightGroup> groups = Grouping.MOTOR.of(rows, Season.DEFAULT_START);
        assertEquals(
                List.of("a3", "b1", "not known"),
                groups.stream().map(FlightGroup::name).toList());
        assertEquals(List.of("f3", "f4"), ids(groups.get(1).flights()));
        assertEquals(
                List.of("2026/27"),
                Grouping.SEASON.of(rows, Season.DEFAULT_START).stream()
                        .map(FlightGroup::name)
                        .toList());
    }

    @Test
    void values_out_of_range_and_a_part_twice_are_refused_with_what_must_hold() {
        assertEquals(
                "The humidity in % must be 0 to 100, but was 130",
                assertThrows(IllegalArgumentException.class, () -> new Conditions(null, 130.0, null))
                        .getMessage());
        assertThrows(IllegalArgumentException.class, () -> new Wound(null, 0, null, null, null, null, null));
        assertThrows(IllegalArgumentException.class, () -> new Wound(null, null, Double.NaN, null, null, null, null));
        StepTime once = new StepTime(Part.WIND, 240L, 250L);
        assertEquals(10, once.overSeconds());
        assertThrows(
                IllegalArgumentException.class,
                () -> new FlightRow(
                        flight("f", 0, null, Counts.yes()),
                        DAY,
                        FlightContext.UNKNOWN,
                        Wound.UNKNOWN,
                        Conditions.UNKNOWN,
                        List.of(),
                        List.of(once, once)));
    }
}
