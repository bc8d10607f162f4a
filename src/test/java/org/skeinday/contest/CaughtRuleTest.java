package org.skeinday.contest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.skeinday.contest.FlightRules.IfCaught;
import org.skeinday.timing.Contact;
import org.skeinday.timing.HeldFlight;
import org.skeinday.timing.HoldRule;

/** What the rules make of a model that the building, or somebody, holds. */
class CaughtRuleTest {
    private static FlightRules rules(@Nullable Long watchedMs, @Nullable String ifCaught, @Nullable String again) {
        FlightRules usual = FlightRules.usual("e");
        return new FlightRules(
                "e",
                watchedMs,
                null,
                0,
                null,
                usual.ifShort(),
                usual.collision(),
                usual.collisionMs(),
                usual.ifSilent(),
                usual.ties(),
                0,
                0,
                0,
                usual.inside(),
                ifCaught,
                again,
                null);
    }

    @Test
    void rules_of_an_earlier_program_mean_what_they_meant() {
        assertEquals(IfCaught.RUNS_ON, rules(null, null, null).ifCaughtRule());
        assertEquals(Optional.empty(), rules(null, null, null).hold());
        assertEquals(
                Optional.of(new HoldRule(8_000, 8_000)),
                rules(8_000L, null, null).hold());
    }

    @Test
    void the_clock_runs_on_or_the_flight_ends_less_ten_seconds_or_at_once() {
        assertEquals(Optional.empty(), rules(null, "runs-on", null).hold());
        assertEquals(
                Optional.of(HoldRule.TEN_SECONDS), rules(null, "less", null).hold());
        assertEquals(Optional.of(HoldRule.AT_ONCE), rules(null, "ends", null).hold());
    }

    @Test
    void each_is_said_with_a_worked_case() {
        assertEquals(
                "the clock runs until the landing: caught at 0:40 and down at 1:00 is 1:00",
                rules(null, "runs-on", null).caughtWords());
        assertEquals(
                "the flight is over when it is caught: caught at 0:40 is 0:40; it may start again",
                rules(null, "ends", "yes").caughtWords());
        assertEquals(
                "over once it was held for 8 s, less 8 s: caught at 0:40 and held until 0:48 is 0:40;"
                        + " it does not start again",
                rules(8_000L, null, null).caughtWords());
    }

    @Test
    void at_once_it_changes_nothing_that_it_came_free() {
        HoldRule atOnce = rules(null, "ends", null).hold().orElseThrow();
        for (Long freed : new Long[] {null, 41_000L}) {
            HeldFlight flight = HeldFlight.of(List.of(new Contact("lamp", 40_000, freed)), 90_000, atOnce);
            assertEquals(40_000, flight.flightMs());
            assertEquals(HeldFlight.Ending.HELD, flight.ending());
            assertEquals("Caught by the lamp at 0:40.00: the flight was over then: 0:40.00", flight.how());
        }
    }

    @Test
    void what_is_no_such_rule_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> rules(null, "stops", null));
        assertThrows(IllegalArgumentException.class, () -> rules(null, null, "perhaps"));
        assertTrue(rules(null, "ends", "yes").letsStartAgain());
        assertTrue(rules(8_000L, null, "yes").letsStartAgain());
        assertFalse(rules(null, null, "yes").letsStartAgain(), "the clock runs on: nothing ended it early");
        assertFalse(rules(null, null, null).letsStartAgain());
    }
}
