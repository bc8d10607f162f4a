package org.skeinday.timing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.timing.WatchReading.Counted;
import org.skeinday.timing.WatchReading.Failed;
import org.skeinday.units.FlightTime;

class WatchesTest {
    private static final TimeRule MIDDLE = new TimeRule(Take.MIDDLE, Take.LONGER, Rounding.DOWN, 10, false);

    private static WatchesRule rule(int wanted) {
        return WatchesRule.of(MIDDLE, wanted);
    }

    private static Counted watch(String name, String time) {
        return new Counted(name, FlightTime.parse(time));
    }

    static Watches watches(String times) {
        List<WatchReading> all = new ArrayList<>();
        for (String time : times.split(" ")) {
            all.add(watch("ABCDE".substring(all.size(), all.size() + 1), time));
        }
        return new Watches(all);
    }

    private static TimeDecision.ForAPerson person(TimeDecision decision) {
        return assertInstanceOf(TimeDecision.ForAPerson.class, decision);
    }

    @Test
    void a_reading_left_out_by_a_person_does_not_count_and_stays_in_the_words() {
        var late = watch("C", "62.50").leaveOut("the chief timekeeper", "pressed late");
        var all = new Watches(List.of(watch("A", "61.21"), watch("B", "61.30"), late));
        var taken = assertInstanceOf(TimeDecision.Taken.class, all.decide(rule(3)));
        assertEquals(61_300, taken.time().millis());
        assertTrue(
                taken.time().how().endsWith("; watch C, 1:02.50, left out by the chief timekeeper: pressed late"),
                taken.time().how());
        assertThrows(IllegalArgumentException.class, () -> watch("C", "1").leaveOut("someone", " "));
        assertThrows(IllegalArgumentException.class, () -> watch("C", "1").leaveOut("", "late"));
    }

    @Test
    void of_three_with_one_failed_the_rule_for_two_is_taken() {
        var all = new Watches(List.of(watch("A", "61.21"), new Failed("B", "stopped by itself"), watch("C", "61.30")));
        var taken = assertInstanceOf(TimeDecision.Taken.class, all.decide(rule(3)));
        assertEquals(61_300, taken.time().millis());
        assertTrue(
                taken.time().how().contains("watch B failed: stopped by itself"),
                taken.time().how());
    }

    @ParameterizedTest
    @CsvSource({"PERSON, 2, false", "TAKE, 2, true", "PERSON, 1, true"})
    void one_watch_left_of_several_counts_by_itself_only_when_the_rules_say_so(
            WatchesRule.IfOne ifOne, int wanted, boolean taken) {
        List<WatchReading> left = new ArrayList<>(List.of(watch("A", "61.21")));
        if (wanted == 2) {
            left.add(new Failed("B", "battery empty"));
        }
        TimeDecision decision = new Watches(left).decide(new WatchesRule(MIDDLE, wanted, 300, ifOne));
        assertEquals(taken, decision instanceof TimeDecision.Taken);
        if (!taken) {
            var forAPerson = person(decision);
            assertEquals(
                    List.of(
                            "One watch is left: watch A: 1:01.21; watch B failed: battery empty. Say whether it counts."),
                    forAPerson.reasons());
            assertEquals(61_210, forAPerson.proposed().orElseThrow().millis());
        }
    }

    @Test
    void a_watch_that_nobody_heard_of_is_not_passed_over() {
        var forAPerson = person(watches("61.21 61.30").decide(rule(3)));
        assertTrue(forAPerson.reasons().get(0).startsWith("Of 3 watches 2 are heard of"));
        assertEquals(61_300, forAPerson.proposed().orElseThrow().millis());
    }

    @Test
    void one_that_is_down_before_the_other_is_not_the_only_one_left() {
        var forAPerson = person(watches("61.21").decide(rule(2)));
        assertEquals(
                List.of("Of 2 watches 1 is heard of. Wait for the others, or say that they failed."),
                forAPerson.reasons());
    }

    @Test
    void without_a_time_or_a_rule_for_so_many_there_is_no_proposal_but_a_reason() {
        var failed = new Watches(List.of(new Failed("A", "dropped")));
        var none = person(failed.decide(rule(1)));
        assertEquals(Optional.empty(), none.proposed());
        assertTrue(
                none.reasons().get(0).contains("watch A failed: dropped"),
                none.reasons().toString());
        var silent = new TimeRule(Take.MIDDLE, null, Rounding.DOWN, 10, false);
        var two = person(watches("1 1").decide(WatchesRule.of(silent, 2)));
        assertEquals(Optional.empty(), two.proposed());
    }

    @Test
    void a_watch_is_named_once_and_limits_are_refused_beyond_their_range() {
        assertThrows(IllegalArgumentException.class, () -> new Watches(List.of(watch("A", "1"), watch("A", "2"))));
        assertThrows(IllegalArgumentException.class, () -> rule(0));
        assertThrows(IllegalArgumentException.class, () -> new WatchesRule(MIDDLE, 1, -1, WatchesRule.IfOne.TAKE));
        assertThrows(IllegalArgumentException.class, () -> new Failed("A", ""));
    }
}
