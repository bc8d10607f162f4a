package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.skeinday.attempt.MotorShares.Asks;

/** One assignment of a team's motors over all its entries. */
class MotorSharesTest {
    private static final List<String> ALL = List.of("a", "b", "c");

    private static Asks waits(String entry, @Nullable String planned, List<String> ranked) {
        return new Asks(entry, false, planned, ranked);
    }

    private static Asks flies(String entry, @Nullable String planned, List<String> ranked) {
        return new Asks(entry, true, planned, ranked);
    }

    private static List<String> ordered(MotorShares shares, String entry) {
        return Stream.of("a", "b", "c", "d").sorted(shares.order(entry)).toList();
    }

    @Test
    void each_entry_gets_its_best_one_before_anybody_gets_a_spare() {
        var shares = new MotorShares(List.of(waits("first", null, ALL), waits("second", null, ALL)));
        assertEquals(List.of("a", "c"), shares.of("first"));
        assertEquals(List.of("b"), shares.of("second"));
        assertEquals(List.of("a", "c", "d", "b"), ordered(shares, "first"));
        assertEquals(List.of("b", "d", "a", "c"), ordered(shares, "second"), "what others need comes last");
        assertEquals(Optional.of("first"), shares.neededBy("c", "second"));
        assertEquals(Optional.empty(), shares.neededBy("c", "first"), "it is its own");
    }

    @Test
    void what_is_planned_for_a_later_entry_is_not_given_to_an_earlier_one() {
        var shares = new MotorShares(List.of(waits("first", null, ALL), waits("second", "a", ALL)));
        assertEquals(List.of("b", "c"), shares.of("first"));
        assertEquals(List.of("a"), shares.of("second"));
    }

    @Test
    void a_plan_that_names_one_motor_twice_or_one_that_is_not_there_is_no_hindrance() {
        var shares =
                new MotorShares(List.of(waits("first", "a", ALL), waits("second", "a", ALL), waits("third", "x", ALL)));
        assertEquals(List.of("a"), shares.of("first"));
        assertEquals(List.of("b"), shares.of("second"));
        assertEquals(List.of("c"), shares.of("third"));
        assertEquals(List.of(), shares.of("unknown"));
    }

    @Test
    void a_call_with_the_own_motor_takes_nothing_from_the_others() {
        List<String> four = List.of("a", "b", "c", "d");
        var before = new MotorShares(List.of(waits("first", null, four), waits("second", null, four)));
        var called = new MotorShares(
                List.of(flies("first", null, List.of("b", "c", "d")), waits("second", null, List.of("b", "c", "d"))));
        assertEquals(List.of("a", "c"), before.of("first"));
        assertEquals(List.of("c"), called.of("first"), "its spare is the one it was");
        assertEquals(before.of("second"), called.of("second"));
    }

    @Test
    void what_is_planned_for_the_attempt_after_the_one_under_way_comes_behind_the_first_ones_of_others() {
        var shares = new MotorShares(List.of(flies("first", "b", ALL), waits("second", "b", ALL)));
        assertEquals(List.of("b"), shares.of("second").subList(0, 1));
        assertEquals(List.of("a"), shares.of("first").subList(0, 1));
    }

    @Test
    void whatever_is_asked_for_no_motor_is_two_entries_own_and_all_are_dealt_out() {
        List<String> many = List.of("a", "b", "c", "d", "e", "f", "g");
        for (int flying = 0; flying < 8; flying++) {
            var asks = List.of(
                    new Asks("first", (flying & 1) > 0, "c", many),
                    new Asks("second", (flying & 2) > 0, null, many),
                    new Asks("third", (flying & 4) > 0, "a", many));
            var shares = new MotorShares(asks);
            List<String> dealt = asks.stream()
                    .flatMap(entry -> shares.of(entry.entry()).stream())
                    .sorted()
                    .toList();
            assertEquals(many, dealt);
            for (Asks entry : asks) {
                int needs = MotorShares.NEEDED - (entry.underWay() ? 1 : 0);
                assertTrue(shares.of(entry.entry()).size() >= needs, entry + " with " + flying);
            }
        }
    }
}
