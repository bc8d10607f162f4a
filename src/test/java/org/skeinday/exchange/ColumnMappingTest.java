package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.skeinday.TestIds;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.contest.EventAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;

class ColumnMappingTest {
    private static final ZoneId ZONE = ZoneId.of("UTC");
    private static final List<String> HEADER =
            List.of("Date", "Clock", "Tag", "Turns", "Torque [in-ozf]", "Duration", "Weather", "Comments");

    /** A record with one event, one batch and the motor R-01. */
    private static Day day() {
        DayFiles.Read read = Reading.of(Reading.RIGHT);
        Reading.right(read);
        return new Day(
                of(read, EventAdded.class),
                List.of(),
                of(read, BatchAdded.class),
                of(read, MotorAdded.class),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Map.of(),
                List.of(),
                List.of(),
                Map.of(),
                Day.More.NONE);
    }

    private static <T> List<T> of(DayFiles.Read read, Class<T> kind) {
        return read.facts().stream()
                .map(DayFiles.Named::body)
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
    }

    private static ColumnMapping.Taken take(ColumnMapping mapping, List<List<String>> rows) {
        return mapping.take(rows, day(), TestIds.from("new-"), ZONE);
    }

    private static List<String> row(String... cells) {
        return List.of(cells);
    }

    @Test
    void the_header_s_words_and_units_are_guessed_and_what_means_nothing_is_left_out() {
        ColumnMapping guess = ColumnMapping.guess("flights.csv", HEADER);
        assertEquals(
                Map.of(
                        0, new ColumnMapping.Meaning("flown", ""),
                        1, new ColumnMapping.Meaning("flown", ""),
                        2, new ColumnMapping.Meaning("motor", ""),
                        3, new ColumnMapping.Meaning("crank turns", ""),
                        4, new ColumnMapping.Meaning("launch torque", "in-ozf"),
                        5, new ColumnMapping.Meaning("time", ""),
                        7, new ColumnMapping.Meaning("note", "")),
                guess.meanings());
        assertEquals(List.of(), guess.missing());
        ColumnMapping slip =
                ColumnMapping.guess("flights.csv", List.of("remainng", "crank_turns", "launch torque (kg)", "x"));
        assertEquals(
                Map.of(
                        0, new ColumnMapping.Meaning("remaining", ""),
                        1, new ColumnMapping.Meaning("crank turns", ""),
                        2, new ColumnMapping.Meaning("launch torque", "")),
                slip.meanings());
        assertEquals(List.of("motor", "flown", "time"), slip.missing());
    }

    @Test
    void a_history_is_taken_by_the_file_s_own_rules() {
        List<List<String>> rows = List.of(
                HEADER,
                row("2.5.2026", "18:00", "R-01", "212", "0.34", "1:35.23", "rain", "=good"),
                row("", "", "", "", "", "", "", ""),
                row("2026-05-02", "18:10", "R-01", "", "", "95.2"));
        ColumnMapping mapping = ColumnMapping.guess("flights.csv", HEADER);
        ColumnMapping.Taken taken = take(mapping, rows);
        assertEquals(List.of(), taken.errors());
        assertEquals(2, taken.rows());
        PracticeFlown first = (PracticeFlown) taken.facts().get(0).body();
        assertEquals(95_230, first.durationMs());
        assertEquals("0.34 in-ozf", first.launchTorqueTyped());
        assertEquals("=good", first.note());
        assertEquals(
                Map.of(
                        "flown",
                        "2.5.2026 18:00",
                        "motor",
                        "R-01",
                        "crank turns",
                        "212",
                        "launch torque",
                        "0.34",
                        "time",
                        "1:35.23",
                        "note",
                        "=good"),
                mapping.preview(rows, 1).get(0));
    }

    @Test
    void one_wrong_cell_and_nothing_is_taken_each_error_names_its_row_and_places() {
        List<List<String>> rows = List.of(
                HEADER,
                row("2026-05-02", "18:00", "R-01", "212", "0.34", "1:35.23"),
                row("yesterday", "", "A9", "many", "0.34", "1:35.23"));
        ColumnMapping.Taken taken = take(ColumnMapping.guess("flights.csv", HEADER), rows);
        assertEquals(List.of(), taken.facts());
        assertEquals(
                List.of(3, 3, 3),
                taken.errors().stream().map(ColumnMapping.WrongCell::row).toList());
        assertEquals(
                List.of(List.of(2), List.of(0, 1), List.of(3)),
                taken.errors().stream().map(ColumnMapping.WrongCell::places).toList());
    }

    @Test
    void one_value_for_all_rows_stands_in_for_a_column_and_a_missing_one_is_named() {
        List<List<String>> rows = List.of(List.of("Date", "Duration"), row("2026-05-02 18:00", "95.2"));
        ColumnMapping guess = ColumnMapping.guess("flights.csv", rows.get(0));
        assertEquals(
                "flights.csv line 1, column \"motor\": no column means this and every row needs it; choose one, or one"
                        + " value for all rows",
                take(guess, rows).errors().get(0).error().text());
        ColumnMapping whole =
                new ColumnMapping("flights.csv", guess.meanings(), Map.of("motor", "R-01", "ratio", "15"));
        PracticeFlown flown = (PracticeFlown) take(whole, rows).facts().get(0).body();
        assertEquals(15, flown.winderRatio());
        assertEquals(1, take(whole, List.of(rows.get(0))).errors().size());
    }

    @Test
    void a_unit_that_does_not_fit_and_a_column_that_is_not_there_are_refused() {
        List<List<String>> rows = List.of(List.of("Date", "Duration"), row("2026-05-02 18:00", "95.2"));
        Map<Integer, ColumnMapping.Meaning> meanings =
                Map.of(0, new ColumnMapping.Meaning("flown", ""), 1, new ColumnMapping.Meaning("time", "kg"));
        ColumnMapping.Taken taken = take(new ColumnMapping("flights.csv", meanings, Map.of("motor", "R-01")), rows);
        assertEquals(List.of(1), taken.errors().get(0).places());
        assertThrows(
                IllegalArgumentException.class, () -> new ColumnMapping("flights.csv", meanings, Map.of("time", "95")));
        assertThrows(
                IllegalArgumentException.class,
                () -> new ColumnMapping("flights.csv", Map.of(0, new ColumnMapping.Meaning("speed", "")), Map.of()));
    }
}
