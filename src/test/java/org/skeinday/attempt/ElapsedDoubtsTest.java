package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A time against what has passed by the server's clock; limits are own defaults. */
class ElapsedDoubtsTest {
    private static final long RELEASED = 1_000_000;

    private static List<String> doubts(String instrument, long ms, @Nullable Long cameInMs, @Nullable Long boundMs) {
        var reading = new ReadingTaken("r", "a", 1, instrument, null, ms, cameInMs, null, null, null);
        var release = new WatchMarked("m", "a", 1, WatchMark.RELEASED.word(), null, null, RELEASED, boundMs, null);
        return ElapsedDoubts.of(new Timed(List.of(reading), List.of(), new Marks(List.of(release))));
    }

    /** A second for the people and the clocks' bound: a millisecond to each side. */
    @ParameterizedTest
    @CsvSource({"61000, 0", "62020, 0", "62021, 1", "600000, 1"})
    void a_time_may_be_longer_than_what_has_passed_by_a_second_and_the_bound(long ms, int doubts) {
        assertEquals(doubts, doubts("device", ms, RELEASED + 61_000, 20L).size());
        assertEquals(doubts, doubts("watch", ms, RELEASED + 61_000, 20L).size());
    }

    @Test
    void a_reading_before_its_release_by_a_clock_that_was_set_back_has_seen_nothing_pass() {
        assertEquals(
                List.of("Watch 1 says 1:01.00, but when that came in, 0:00.0 had passed since the release."
                        + " Ask its timekeeper."),
                doubts("device", 61_000, RELEASED - 5_000, 20L));
    }

    @Test
    void nothing_is_said_where_nobody_knows_the_moment_of_the_release_or_of_the_reading() {
        assertEquals(List.of(), doubts("device", 600_000, RELEASED + 1, null));
        assertEquals(List.of(), doubts("device", 600_000, null, 20L));
    }

    @ParameterizedTest
    @CsvSource({"device, 999, 1", "device, 1000, 0", "watch, 999, 0"})
    void a_stop_within_a_second_is_a_double_press_of_the_programs_own_watch(String instrument, long ms, int doubts) {
        assertEquals(doubts, doubts(instrument, ms, RELEASED + 5_000, 20L).size());
    }
}
