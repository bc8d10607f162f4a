package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SearchClockTest {
    private long nanos = 5_000_000_000L;

    private SearchClock of(double seconds) {
        return SearchClock.of(seconds, () -> nanos);
    }

    @Test
    void a_limit_counts_down_and_keeps_a_tenth_for_what_follows_the_headline() {
        SearchClock clock = of(4);
        assertEquals(3.6, clock.leftForHeadline(), 1e-9);
        nanos += 3_000_000_000L;
        assertEquals(3, clock.elapsed(), 1e-9);
        assertEquals(1, clock.left(), 1e-9);
        assertFalse(clock.isOver());
        nanos += 2_000_000_000L;
        assertTrue(clock.isOver());
        assertEquals(59, of(60).leftForHeadline(), 1e-9);
    }

    @Test
    void effort_is_no_more_than_what_is_left_allows_and_unlimited_stays_as_it_was() {
        SearchClock clock = of(1);
        assertEquals(new Effort(0.4, 0.1), clock.within(Effort.patient()));
        nanos += 1_000_000_000L;
        assertTrue(clock.within(Effort.patient()).proofWork() < 0.01);
        assertEquals(Effort.patient(), SearchClock.unlimited(() -> nanos).within(Effort.patient()));
    }

    @Test
    void words_say_the_best_plan_and_what_none_can_beat_in_the_goals_figures() {
        SearchClock clock = of(1);
        assertEquals("no plan yet", clock.words(Goal.MAKESPAN));
        clock.noneBelow(808);
        assertEquals("no plan yet, none ends before 808", clock.words(Goal.MAKESPAN));
        clock.found(949, 800);
        assertEquals("a plan that ends at 949, none ends before 808", clock.words(Goal.MAKESPAN));
        SearchClock slack = of(1);
        slack.found(-12, -20);
        assertEquals("a plan with in hand 12, none has more than 20", slack.words(Goal.SLACK));
    }

    @Test
    void a_limit_must_be_above_0_and_a_day_at_most() {
        for (double seconds : new double[] {0, -1, Double.NaN, 86_401, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> of(seconds), "limit " + seconds);
        }
    }
}
