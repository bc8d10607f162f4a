package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class BackwardSumTest {
    private static final long MINUTE = 60_000;
    private static final Map<Part, Estimate> OWN = Map.of(
            Part.PREPARE, new Estimate(Part.PREPARE, 100, 120, 5),
            Part.WIND, new Estimate(Part.WIND, 150, 180, 5),
            Part.LOAD, new Estimate(Part.LOAD, 50, 60, 5),
            Part.FLY, new Estimate(Part.FLY, 100, 120, 5),
            Part.RUN_BACK, new Estimate(Part.RUN_BACK, 60, 60, 5));
    private static final BackwardSum RELEASE = new BackwardSum(OWN, false);

    @Test
    void winding_begins_so_early_that_nine_of_ten_are_released_inside() {
        assertEquals(20 * MINUTE - 240_000, RELEASE.latestWindingMs(20 * MINUTE));
    }

    @Test
    void where_the_landing_counts_the_flight_is_inside_too() {
        assertEquals(20 * MINUTE - 360_000, new BackwardSum(OWN, true).latestWindingMs(20 * MINUTE));
    }

    @Test
    void without_own_history_the_stated_lengths_are_summed_and_said() {
        BackwardSum stated = new BackwardSum(Map.of(), false);
        assertEquals(1000 * (Part.WIND.defaultSeconds() + Part.LOAD.defaultSeconds()), stated.windingToInsideMs());
        assertTrue(stated.basis().contains("stated"), stated.basis());
        assertEquals("wind 3:00, load 1:00 (nine of ten of your own took no longer)", RELEASE.basis());
    }

    @Test
    void what_is_left_counts_from_now_and_from_the_opening() {
        // prepare 2, wind 3, load 1, fly 2, run back 1
        assertEquals(11 * MINUTE, RELEASE.leftAfterMs(0, 0, 20 * MINUTE, null, 0));
        assertEquals(8 * MINUTE, RELEASE.leftAfterMs(0, 5 * MINUTE, 20 * MINUTE, null, 0), "winding waits for it");
        assertEquals(0, RELEASE.leftAfterMs(0, 0, 8 * MINUTE, null, 0));
        assertEquals(
                RELEASE.leftAfterMs(5 * MINUTE, 5 * MINUTE, 17 * MINUTE, Part.FLY, 5 * MINUTE),
                RELEASE.leftAfterMs(0, 5 * MINUTE, 17 * MINUTE, Part.WIND, -10 * MINUTE),
                "what is wound before the window opens flies in it");
    }

    @Test
    void a_part_that_runs_counts_from_its_start_and_ends_now_at_the_earliest() {
        assertEquals(15 * MINUTE, RELEASE.leftAfterMs(MINUTE, 0, 20 * MINUTE, Part.WIND, -2 * MINUTE));
        assertEquals(16 * MINUTE, RELEASE.leftAfterMs(0, 0, 20 * MINUTE, Part.LOAD, -10 * MINUTE) - MINUTE);
    }

    @Test
    void so_many_attempts_fit_as_begin_early_enough() {
        assertEquals(0, RELEASE.fit(6 * MINUTE - 1));
        assertEquals(1, RELEASE.fit(6 * MINUTE));
        assertEquals(1, RELEASE.fit(15 * MINUTE - 1));
        assertEquals(2, RELEASE.fit(15 * MINUTE));
    }

    @Test
    void steps_that_were_told_at_once_or_forgotten_say_nothing_of_how_long_a_part_takes() {
        List<StepTimes> told =
                List.of(wound(0, 180_000), wound(0, 200_000), wound(0, 240_000), wound(0, 1_000), wound(0, 3_600_000));
        Estimate wind = Estimate.ofAttempts(told).get(Part.WIND);
        assertEquals(3, wind.rests());
        assertEquals(200, wind.median());
        Estimate two = Estimate.ofAttempts(told.subList(0, 2)).get(Part.WIND);
        assertEquals(0, two.rests(), "two of one's own tell too little");
        assertEquals(Part.WIND.defaultSeconds(), two.careful());
    }

    private static StepTimes wound(long from, long to) {
        return new StepTimes("a", null, from, to, null, null);
    }
}
