package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.evidence.ValueMarked;

/** Where numbers of files came from, and who confirmed which. */
class FlightMarksTest {
    private static final String FLIGHT = "motor,flown,crank turns,launch torque,time";
    private static final String ROW = "\nR-01,2026-05-09 10:00,200,0.5 in-ozf,1:43";

    private static DayFiles.Read flights(String head, String cells) {
        return Reading.with("flights.csv", FLIGHT + head + ROW + cells + "\n");
    }

    private static String attempts(String head, String cells) {
        return marks(Reading.with(
                "attempts.csv", "entry,attempt,state,official,stop count" + head + "\nTeal,1," + cells + "\n"));
    }

    private static String marks(DayFiles.Read read) {
        Reading.right(read);
        Map<String, String> names = new HashMap<>();
        read.names().forEach((id, name) -> names.put(id, name.toString()));
        return read.facts().stream()
                .map(DayFiles.Named::body)
                .filter(ValueMarked.class::isInstance)
                .map(ValueMarked.class::cast)
                .map(m -> m.measured() + (m.number() == null ? "" : "=" + Math.round(m.number())) + " " + m.source()
                        + (m.confirmed()
                                ? " by " + (m.confirmedBy() == null ? "nobody" : names.get(m.confirmedBy()))
                                : ""))
                .collect(Collectors.joining(", "));
    }

    @Test
    void
            a_file_of_before_says_nothing_so_that_all_in_it_was_typed_and_a_row_that_somebody_wrote_into_a_file_is_of_it() {
        assertEquals("", marks(flights("", "")));
        assertEquals("flight file", marks(flights(",source,numbers,confirmed by", ",,,")));
        assertEquals("", marks(flights(",source", ",typed")));
        assertEquals("flight card", marks(flights(",source", ",card")));
        assertEquals("flight file", attempts(",source", "closed,1:43,200,"));
        assertEquals("", attempts(",source,from paper", "closed,1:43,200,,yes"), "a card is of the card");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            nullValues = "-",
            value = {
                "Ann;crank-turns=200 typed by Ann, time=103000 tap by Ann",
                "Ann | Ben;crank-turns=200 typed by Ann, time=103000 tap by Ben",
                "| Ben;crank-turns=200 typed by nobody, time=103000 tap by Ben",
                "Ann |;crank-turns=200 typed by Ann, time=103000 tap by nobody",
                "A||B | Ben;crank-turns=200 typed by A|B, time=103000 tap by Ben",
            })
    void a_confirmation_goes_with_the_number_that_it_confirms(String by, String marks) {
        assertEquals(
                marks,
                marks(flights(
                        ",source,numbers,confirmed by",
                        ",typed,crank-turns typed confirmed | time tap confirmed," + by)));
    }

    @Test
    void one_name_with_a_bar_in_it_is_one_name_where_one_number_is_confirmed() {
        assertEquals(
                "time=103000 tap by A | B",
                marks(flights(",source,numbers,confirmed by", ",typed,time tap confirmed,A | B")));
    }

    @Test
    void a_time_that_no_official_one_stands_for_is_named_with_its_mark() {
        assertEquals(
                "time=102340 tap by Ann",
                attempts(",source,numbers,confirmed by", "landed,,200,typed,time=1:42.34 tap confirmed,Ann"));
    }

    @Test
    void what_a_cell_of_numbers_cannot_say_is_refused_with_what_would_be_right() {
        Map<String, String> refused = Map.of(
                "time", "does not say which number",
                "time taped", "'taped'",
                "tyme tap", "'tyme'",
                "back-off typed", "this row has no back-off",
                "time=1:44 tap", "stands in the row itself",
                "crank-turns=3 tap", "stands in the row itself");
        refused.forEach((cell, wrong) -> {
            CellError error = Reading.only(flights(",numbers", "," + cell));
            assertEquals(
                    List.of("numbers", true),
                    List.of(error.column(), error.wrong().contains(wrong)),
                    error.text());
        });
        Reading.says(
                flights(",numbers,confirmed by", ",crank-turns typed confirmed | time tap confirmed,A | B | C"),
                2,
                "confirmed by",
                "3 places for names, but 2 numbers are confirmed",
                "one for each in the order");
    }
}
