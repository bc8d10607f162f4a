package org.skeinday.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.steps.ListFixture.PAUSES;
import static org.skeinday.steps.ListFixture.S;
import static org.skeinday.steps.ListFixture.back;
import static org.skeinday.steps.ListFixture.correct;
import static org.skeinday.steps.ListFixture.landing;
import static org.skeinday.steps.ListFixture.list;
import static org.skeinday.steps.ListFixture.ok;
import static org.skeinday.steps.ListFixture.read;
import static org.skeinday.steps.ListFixture.reopen;
import static org.skeinday.steps.ListFixture.skip;
import static org.skeinday.steps.ListFixture.tick;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RunRulesTest {
    @Test
    void a_critical_item_cannot_be_left_out_and_another_can() {
        assertEquals(
                Optional.of("'Do held' is critical and cannot be left out: Because of held"),
                RunRules.refuses(landing(), skip("1", "held", 0)));
        assertEquals(Optional.empty(), RunRules.refuses(landing(), skip("1", "look", 0)));
    }

    @Test
    void a_skip_needs_a_reason() {
        assertThrows(IllegalArgumentException.class, () -> new Skipped("1", "r", "look", " ", 1, 0, null, "t"));
    }

    @Test
    void an_item_with_a_value_is_answered_with_that_value() {
        assertTrue(
                RunRules.refuses(landing(), tick("1", "count", 0)).orElseThrow().contains("not with OK"));
        assertTrue(
                RunRules.refuses(landing(), tick("1", "count", "many", 0, null)).isPresent());
        assertEquals(Optional.empty(), RunRules.refuses(landing(), tick("1", "count", "7", 0, null)));
        assertEquals(Optional.empty(), RunRules.refuses(landing(), tick("1", "held", 0)));
    }

    @Test
    void an_item_of_another_revision_is_not_there() {
        Optional<String> no = Optional.of("revision 1 of 'A list' has no such item");
        assertEquals(no, RunRules.refuses(landing(), tick("1", "gone", 0)));
        assertEquals(no, RunRules.refuses(landing(), skip("1", "gone", 0)));
        assertEquals(no, RunRules.refuses(landing(), correct("1", "0", "gone", true, null, 0)));
    }

    @Test
    void only_a_list_to_read_aloud_is_one_tap() {
        assertEquals(
                Optional.empty(), RunRules.refuses(list(Moment.BEFORE_LOADING, true, ok("a", true)), read("1", 0)));
        assertTrue(RunRules.refuses(landing(), read("1", 0)).isPresent());
    }

    @Test
    void a_slip_is_taken_back_for_ten_seconds_and_then_corrected() {
        assertEquals(Optional.empty(), RunRules.refuses(tick("1", "held", 0), back("2", "1", 10 * S), PAUSES));
        assertEquals(
                Optional.of("it can be taken back for 10 s only; correct it with a reason"),
                RunRules.refuses(tick("1", "held", 0), back("2", "1", 10 * S + 1), PAUSES));
        assertTrue(RunRules.refuses(reopen("1", "held", 0), back("2", "1", S), PAUSES)
                .isPresent());
    }

    @Test
    void a_correction_needs_the_right_value_and_a_reason() {
        assertEquals(Optional.empty(), RunRules.refuses(landing(), correct("2", "1", "count", true, "8", 0)));
        assertEquals(Optional.empty(), RunRules.refuses(landing(), correct("2", "1", "count", false, null, 0)));
        assertTrue(RunRules.refuses(landing(), correct("2", "1", "count", true, null, 0))
                .isPresent());
        assertTrue(RunRules.refuses(landing(), correct("2", "1", "count", true, "eight", 0))
                .isPresent());
        assertThrows(
                IllegalArgumentException.class,
                () -> new Corrected("2", "r", "1", "count", true, "8", "", 0, null, "t"));
    }

    @Test
    void pauses_are_not_negative_and_to_ask_again_comes_last() {
        assertThrows(IllegalArgumentException.class, () -> Pauses.usual(Duration.ofSeconds(-1)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Pauses(Duration.ZERO, Duration.ofSeconds(1), Duration.ofSeconds(2)));
    }
}
