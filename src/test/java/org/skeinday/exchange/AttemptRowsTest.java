package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.ReadingTaken;

class AttemptRowsTest {
    private static final String HEAD = "entry,attempt,state,ended,official,how,reason\n";

    private static DayFiles.Read attempts(String rows) {
        return Reading.with("attempts.csv", HEAD + rows);
    }

    private static DayFiles.Read readings(String text) {
        Map<String, String> texts = new HashMap<>(Reading.RIGHT);
        texts.put("attempts.csv", HEAD + "Teal,1,landed,,,,\n");
        texts.put("readings.csv", text);
        return Reading.of(texts);
    }

    private static List<Object> bodies(DayFiles.Read read, String kind) {
        Reading.right(read);
        return read.facts().stream()
                .filter(f -> f.kind().equals(kind))
                .map(DayFiles.Named::body)
                .toList();
    }

    private static void says(DayFiles.Read read, int line, String column, String wrong) {
        CellError error = Reading.only(read);
        assertEquals(line, error.line(), error.text());
        assertEquals(column, error.column(), error.text());
        assertTrue(error.wrong().contains(wrong), error.text());
    }

    @Test
    void a_closed_attempt_with_its_explanation_is_closed_with_it() {
        DayFiles.Read read = attempts("Teal,1,closed,2026-05-09 10:05,1:52.8,Watch 1:52.84,\n");
        var attempt = (AttemptImported) bodies(read, "attempt.imported").get(0);
        var closed = (AttemptClosed) bodies(read, "attempt.closed").get(0);
        assertEquals(attempt.id(), closed.attemptId());
        assertEquals(112_800, closed.officialMs());
        assertEquals("Watch 1:52.84", closed.how());
        assertEquals(attempt.closedAtMs(), closed.atMs());
    }

    @Test
    void a_closed_attempt_needs_no_more_than_its_time() {
        DayFiles.Read read = attempts("Teal,1,closed,,1:52.8,,\n");
        assertEquals(1, bodies(read, "attempt.imported").size());
        assertEquals(0, bodies(read, "attempt.closed").size());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "Teal,1,closed,,,,;official;closed needs this",
                "Teal,1,landed,,1:00,,;official;landed has none",
                "Teal,1,void,,,,;reason;void needs this",
                "Teal,1,scrubbed,,,,;reason;scrubbed needs this",
                "Teal,1,called,,,,why;reason;called has none",
                "Teal,1,called,,,so,;how;no official time to explain",
                "Teal,1,closed,,1:00,so,;ended;not when",
                "Teal,1,flown,,,,;state;'flown' is not known",
                "Teal,0,called,,,,;attempt;out of bounds",
                "Teal,1000,called,,,,;attempt;out of bounds",
                "Teel,1,called,,,,;entry;no entry 'Teel'",
                "Teal,2,called,,,,;attempt;attempt 1 of this entry is missing before attempt 2",
            })
    void what_does_not_go_together_in_an_attempt_is_said(String row, String column, String wrong) {
        says(attempts(row + "\n"), 2, column, wrong);
    }

    @Test
    void an_attempt_that_is_there_twice_names_both_lines() {
        says(attempts("Teal,1,called,,,,\nTeal,1,called,,,,\n"), 3, "attempt", "on line 2 and again on line 3");
    }

    @Test
    void attempts_may_stand_in_any_order_as_long_as_none_is_missing() {
        assertEquals(
                2,
                bodies(attempts("Teal,2,called,,,,\nTeal,1,void,,,,hit a beam\n"), "attempt.imported")
                        .size());
    }

    @Test
    void a_reading_says_which_one_it_corrects_by_its_number() {
        List<Object> all = bodies(
                readings("entry,attempt,place,time,reading,corrects\nTeal,1,1,1:00,2,1\nTeal,1,1,1:01,1,\n"),
                "attempt.reading");
        var second = (ReadingTaken) all.get(0);
        var first = (ReadingTaken) all.get(1);
        assertEquals(first.id(), second.corrects());
        assertEquals("watch", first.instrument());
    }

    @Test
    void readings_without_a_number_are_counted() {
        List<Object> all = bodies(
                readings("entry,attempt,place,time\nTeal,1,1,1:00\nTeal,1,2,1:01\nTeal,1,2,1:02\n"), "attempt.reading");
        assertEquals(3, all.size());
    }

    @Test
    void ids_sort_in_the_order_of_the_rows() {
        StringBuilder rows = new StringBuilder("entry,attempt,place,time\n");
        for (int i = 0; i < 12; i++) {
            rows.append("Teal,1,1,1:0").append(i % 10).append('\n');
        }
        List<String> ids = bodies(readings(rows.toString()), "attempt.reading").stream()
                .map(b -> ((ReadingTaken) b).id())
                .toList();
        assertEquals(ids.stream().sorted().toList(), ids);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "Teal,2,1,1:00,,,;attempt;no attempt 2",
                "Teal,1,0,1:00,,,;place;out of bounds",
                "Teal,1,4,1:00,,,;place;out of bounds",
                "Teal,1,1,1:60,,,;time;not a time",
                "Teal,1,1,1:00,,7,;corrects;no reading '7'",
                "Teal,1,1,1:00,,,Bo;person;no person 'Bo'",
            })
    void what_is_wrong_with_a_reading_is_said(String row, String column, String wrong) {
        says(readings("entry,attempt,place,time,reading,corrects,person\n" + row + "\n"), 2, column, wrong);
    }

    @Test
    void one_place_has_one_watch() {
        Map<String, String> texts = new HashMap<>(Reading.RIGHT);
        texts.put("attempts.csv", HEAD + "Teal,1,called,,,,\n");
        texts.put("watches.csv", "entry,attempt,place,device,person\nTeal,1,1,d1,Ida\nTeal,1,1,d2,\n");
        says(Reading.of(texts), 3, "place", "on line 2 and again on line 3");
    }

    private static DayFiles.Read placed(String cells) {
        return Reading.with(
                "attempts.csv",
                "entry,attempt,state,wound at,meter,division (in-ozf),full scale (in-ozf),winder ratio\nTeal,1,landed,"
                        + cells + "\n");
    }

    @Test
    void the_winding_place_comes_in_as_it_was_whether_it_is_prepared_here_or_not() {
        var at = (AttemptStation) bodies(placed("Corner post,dial 2,0.02,0.5,20"), "attempt.station")
                .get(0);
        assertEquals(List.of("Corner post", "dial 2", 20.0), List.of(at.name(), at.meter(), at.winderRatio()));
        assertEquals("0.02 in-ozf", at.divisionTyped());
        assertNull(at.stationId());
        assertEquals(0, bodies(placed(",,,,"), "attempt.station").size());
        assertEquals(
                0, bodies(attempts("Teal,1,landed,,,,\n"), "attempt.station").size(), "a file of before");
    }

    @Test
    void a_meter_or_a_winder_of_no_place_is_said() {
        says(placed(",dial 2,,,"), 2, "meter", "not which one it was");
        says(placed(",,,,20"), 2, "winder ratio", "not which one it was");
        says(placed("Corner post,,,,200"), 2, "winder ratio", "out of bounds");
    }

    private static DayFiles.Read caught(String cells) {
        return Reading.with(
                "attempts.csv",
                "entry,attempt,state,caught at,caught by,contacts,counts\nTeal,1,landed," + cells + "\n");
    }

    @Test
    void a_model_that_was_caught_touched_something_and_what_was_said_of_it_holds() {
        var judged = (FlightJudged)
                bodies(caught("0:42,building,,yes"), "attempt.judged").get(0);
        assertTrue(judged.decidesOfContact(1), "it was said of the catch");
        assertFalse(judged.decidesOfContact(2), "a second contact nobody knew");
        assertEquals(
                0, bodies(caught("0:42,building,,undecided"), "attempt.judged").size());
        says(caught(",,,undecided"), 2, "counts", "this one has none");
        var free = (FlightJudged) bodies(caught(",,,yes"), "attempt.judged").get(0);
        assertFalse(free.decidesOfContact(1), "nothing was touched when it was said");
    }
}
