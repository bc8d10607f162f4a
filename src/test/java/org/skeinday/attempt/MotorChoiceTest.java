package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.attempt.MotorChoice.Candidate;
import org.skeinday.attempt.MotorChoice.Ranked;
import org.skeinday.motor.Interval;

class MotorChoiceTest {
    private static final FlightForecast NONE = new FlightForecast.NotKnown("a forecast needs 3 valid flights");

    private static FlightForecast seconds(double s) {
        return new FlightForecast.Expected(s, new Interval(s - 9, s + 9, 0.9), 4, "flights on any use");
    }

    @Test
    void longest_expected_first_then_used_then_fresh_then_those_that_may_not() {
        List<Ranked> ranked = MotorChoice.rank(List.of(
                new Candidate("other way", false, "", "", 1, 5, seconds(200)),
                new Candidate("fresh", true, "", "", 0, 5, NONE),
                new Candidate("worn", true, "", "", 5, 5, seconds(190)),
                new Candidate("gritty", true, "gritty: wash it first", "", 2, 5, seconds(180)),
                new Candidate("used", true, "", "", 2, 5, NONE),
                new Candidate("good", true, "", "", 3, 5, seconds(110)),
                new Candidate("best", true, "", "", 2, 5, seconds(120))));
        assertEquals(
                List.of("best", "good", "used", "fresh"),
                ranked.stream().filter(Ranked::fit).map(Ranked::motorId).toList());
        assertEquals("expected 120 s from 4 flights on any use", ranked.get(0).reason());
        assertTrue(ranked.stream().noneMatch(r -> r.reason().isBlank()));
        assertFalse(ranked.get(6).fit());
    }

    @Test
    void one_that_waits_comes_after_those_that_can_be_wound_at_once_and_before_those_that_may_not() {
        List<Ranked> ranked = MotorChoice.rank(List.of(
                new Candidate("resting", true, "", "resting", 1, 5, seconds(200)),
                new Candidate("fresh", true, "", "", 0, 5, NONE),
                new Candidate("worn", true, "", "", 5, 5, seconds(210))));
        assertEquals(
                List.of("fresh", "resting", "worn"),
                ranked.stream().map(Ranked::motorId).toList());
        assertEquals(
                "resting; expected 200 s from 4 flights on any use",
                ranked.get(1).reason());
    }
}
