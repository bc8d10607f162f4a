package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.TestIds;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.WindowAdded;

/** In a zone that puts its clocks forward on 2026-03-29 at 2:00 and back on 2026-10-25 at 3:00. */
class MomentsTest {
    private static final ZoneId ZONE = Reading.ZONE;
    private static final Moments MOMENTS = new Moments(ZONE, Duration.ZERO);

    private static DayFiles.Read opening(String moment, Duration shift) {
        return DayFiles.read(
                Map.of(
                        "event.csv",
                        "name,day\nReed Day,2026-05-09\n",
                        "windows.csv",
                        "opens,closes\n" + moment + ",2027-01-01 00:00\n"),
                Day.EMPTY,
                TestIds.from("act-"),
                ZONE,
                shift);
    }

    private static long opens(DayFiles.Read read) {
        Reading.right(read);
        return ((WindowAdded) read.facts().get(1).body()).opensAtMs();
    }

    @ParameterizedTest
    @CsvSource({
        "2026-05-09 10:00, 2026-05-09T08:00:00Z",
        "2026-05-09 9:05, 2026-05-09T07:05:00Z",
        "2026-05-09T10:00:01, 2026-05-09T08:00:01Z",
        "2026-05-09 10:00:01.5, 2026-05-09T08:00:01.500Z",
        "2026-05-09 10:00Z, 2026-05-09T10:00:00Z",
        "9.5.2026 10:00, 2026-05-09T08:00:00Z",
        "09.05.2026 10:00:01, 2026-05-09T08:00:01Z",
        "2026-03-29 01:59, 2026-03-29T00:59:00Z",
        "2026-03-29 03:00, 2026-03-29T01:00:00Z",
        "2026-10-25 02:30+02:00, 2026-10-25T00:30:00Z",
        "2026-10-25 02:30+01:00, 2026-10-25T01:30:00Z",
    })
    void a_moment_is_read_by_the_clock_on_the_wall(String typed, String instant) {
        assertEquals(Instant.parse(instant).toEpochMilli(), opens(opening(typed, Duration.ZERO)));
    }

    @ParameterizedTest
    @CsvSource({
        "2026-03-29 02:00, does not exist",
        "2026-03-29 02:59, does not exist",
        "2026-10-25 02:00, comes twice",
        "2026-10-25 02:59, comes twice",
        "2026-02-30 10:00, not on the calendar",
        "2026-05-09 24:00, not on the calendar or the clock",
        "5/9/2026 10:00, is no moment",
        "2026-05-09, is no moment",
    })
    void a_moment_that_is_none_or_two_is_refused(String typed, String wrong) {
        CellError error = Reading.only(opening(typed, Duration.ZERO));
        assertEquals("opens", error.column());
        assertTrue(error.wrong().contains(wrong), error.text());
    }

    @ParameterizedTest
    @CsvSource({
        "2026-05-09T08:00:00Z, 2026-05-09 10:00",
        "2026-05-09T08:00:00.001Z, 2026-05-09 10:00:00.001",
        "2026-10-25T00:30:00Z, 2026-10-25 02:30+02:00",
        "2026-10-25T01:30:00Z, 2026-10-25 02:30+01:00",
        "2026-10-25T02:00:00Z, 2026-10-25 03:00",
    })
    void a_moment_is_written_so_that_it_is_read_as_the_same(String instant, String text) {
        long ms = Instant.parse(instant).toEpochMilli();
        assertEquals(text, MOMENTS.text(ms));
        assertEquals(ms, opens(opening(text, Duration.ZERO)));
    }

    @Test
    void a_shift_moves_the_clock_on_the_wall_over_a_change_of_clocks_too() {
        LocalDateTime from = LocalDateTime.of(2026, 5, 9, 10, 0);
        LocalDateTime to = LocalDateTime.of(2026, 11, 25, 9, 20);
        DayFiles.Read read = opening("2026-05-09 10:00", Duration.between(from, to));
        assertEquals(to.atZone(ZONE).toInstant().toEpochMilli(), opens(read));
        assertEquals("2026-11-25", ((EventAdded) read.facts().get(0).body()).day());
    }

    @ParameterizedTest
    @CsvSource({"2026-05-08T23:59, 2026-05-08", "2026-05-09T00:00, 2026-05-09", "2026-05-09T23:59, 2026-05-09"})
    void an_event_keeps_the_day_of_its_first_window_when_that_opens_at_ten(LocalDateTime opens, String day) {
        Duration shift = Duration.between(LocalDateTime.of(2026, 5, 9, 10, 0), opens);
        assertEquals(
                day,
                ((EventAdded) opening("2026-05-09 10:00", shift).facts().get(0).body()).day());
    }
}
