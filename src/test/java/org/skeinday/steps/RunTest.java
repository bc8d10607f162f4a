package org.skeinday.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.steps.ListFixture.S;
import static org.skeinday.steps.ListFixture.back;
import static org.skeinday.steps.ListFixture.correct;
import static org.skeinday.steps.ListFixture.ids;
import static org.skeinday.steps.ListFixture.landing;
import static org.skeinday.steps.ListFixture.list;
import static org.skeinday.steps.ListFixture.ok;
import static org.skeinday.steps.ListFixture.read;
import static org.skeinday.steps.ListFixture.reopen;
import static org.skeinday.steps.ListFixture.run;
import static org.skeinday.steps.ListFixture.skip;
import static org.skeinday.steps.ListFixture.tick;
import static org.skeinday.steps.ListFixture.value;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RunTest {
    private static StepState state(Run run, int index) {
        return run.states().get(index);
    }

    @Test
    void a_run_without_facts_is_all_open() {
        Run run = run(landing());
        assertEquals(List.of("held", "motor", "look", "count"), ids(run.open()));
        assertEquals("held", run.open().get(0).id());
        assertFalse(run.isComplete());
        assertEquals(Optional.empty(), run.ending());
    }

    @Test
    void a_tick_does_its_item_and_the_next_open_one_follows() {
        Run run = run(landing(), tick("1", "held", 0));
        assertEquals(List.of("held"), ids(run.done()));
        assertEquals("motor", run.open().get(0).id());
    }

    @Test
    void a_run_is_complete_when_all_is_done_or_left_out_and_says_what_comes_next() {
        Run run = run(
                landing(),
                tick("1", "held", 0),
                tick("2", "motor", 1),
                skip("3", "look", 2),
                tick("4", "count", "12", 3, "ines"));
        assertTrue(run.isComplete());
        assertEquals(Optional.of("Next: fly."), run.ending());
        assertEquals(List.of("look"), ids(run.skipped()));
        assertEquals("no time", state(run, 2).skip().orElseThrow().reason());
        assertEquals(Optional.of("12"), state(run, 3).answer());
    }

    @Test
    void a_critical_item_that_was_left_out_all_the_same_stays_open() {
        assertEquals("held", run(landing(), skip("1", "held", 0)).open().get(0).id());
    }

    @Test
    void what_was_done_is_done_whether_it_was_left_out_before_or_after() {
        assertTrue(state(run(landing(), skip("1", "look", 0), tick("2", "look", 1)), 2)
                .isDone());
        Run after = run(landing(), tick("1", "look", 0), skip("2", "look", 1));
        assertTrue(state(after, 2).isDone());
        assertEquals(2, state(after, 2).facts().size());
    }

    @Test
    void an_item_that_asks_for_a_value_is_not_done_by_ok() {
        assertTrue(state(run(landing(), tick("1", "count", 0)), 3).isOpen());
    }

    @Test
    void two_people_tick_one_item_once_and_both_are_kept() {
        Run run = run(landing(), tick("1", "held", null, 0, "ines"), tick("2", "held", null, 400, "tomek"));
        assertEquals(List.of("held"), ids(run.done()));
        assertEquals(2, state(run, 0).counted().size());
        assertFalse(state(run, 0).isInDoubt());
    }

    @Test
    void two_people_with_two_values_are_put_before_a_person() {
        Run run = run(landing(), tick("1", "count", "12", 0, "ines"), tick("2", "count", "13", 400, "tomek"));
        assertTrue(state(run, 3).isInDoubt());
        assertEquals(Optional.of("13"), state(run, 3).answer());
    }

    @Test
    void when_one_of_two_takes_the_tick_back_the_others_holds() {
        Run both = run(landing(), tick("1", "held", 0), tick("2", "held", null, 400, "tomek"), back("3", "1", 900));
        assertTrue(state(both, 0).isDone());
        assertTrue(state(run(landing(), tick("1", "held", 0), back("3", "1", 900)), 0)
                .isOpen());
    }

    @Test
    void a_tick_can_be_taken_back_for_ten_seconds_and_stays_in_the_record() {
        Run inTime = run(landing(), tick("1", "held", 0), back("2", "1", 10 * S));
        assertTrue(state(inTime, 0).isOpen());
        assertEquals(2, state(inTime, 0).facts().size());
        assertTrue(state(run(landing(), tick("1", "held", 0), back("2", "1", 10 * S + 1)), 0)
                .isDone());
    }

    @Test
    void a_skip_can_be_taken_back_too() {
        assertTrue(state(run(landing(), skip("1", "look", 0), back("2", "1", S)), 2)
                .isOpen());
    }

    @Test
    void a_correction_puts_the_value_right_and_the_latest_holds() {
        Run run = run(
                landing(),
                tick("1", "count", "12", 0, "ines"),
                correct("2", "1", "count", true, "21", 60 * S),
                correct("3", "1", "count", true, "22", 90 * S));
        assertEquals(Optional.of("22"), state(run, 3).answer());
        assertEquals(3, state(run, 3).facts().size());
    }

    @Test
    void a_correction_can_say_that_it_was_not_done() {
        Run run = run(landing(), tick("1", "held", 0), correct("2", "1", "held", false, null, 60 * S));
        assertTrue(state(run, 0).isOpen());
        Run mended = run(
                landing(),
                tick("1", "held", 0),
                correct("2", "1", "held", false, null, 60 * S),
                back("3", "2", 65 * S));
        assertTrue(state(mended, 0).isDone());
    }

    @Test
    void a_reopened_item_is_open_until_it_is_ticked_again() {
        Run reopened = run(landing(), tick("1", "held", 0), reopen("2", "held", S));
        assertTrue(state(reopened, 0).isOpen());
        assertEquals(
                "the lane was moved",
                state(reopened, 0).reopened().orElseThrow().reason());
        assertTrue(state(run(landing(), tick("1", "held", 0), reopen("2", "held", S), tick("3", "held", 2 * S)), 0)
                .isDone());
    }

    @Test
    void a_tick_of_the_same_moment_does_not_outlive_the_reopening() {
        assertTrue(state(run(landing(), tick("9", "held", S), reopen("2", "held", S)), 0)
                .isOpen());
    }

    @Test
    void reopening_one_item_leaves_the_others() {
        Run run = run(landing(), tick("1", "held", 0), tick("2", "motor", 1), reopen("3", "held", S));
        assertEquals(List.of("motor"), ids(run.done()));
    }

    @Test
    void a_list_read_aloud_is_one_tap() {
        Checklist aloud = list(Moment.BEFORE_LOADING, true, ok("a", true), ok("b", true));
        assertTrue(run(aloud, read("1", 0)).isComplete());
        assertEquals(
                List.of("a", "b"),
                ids(run(aloud, read("1", 0), back("2", "1", S)).open()));
        assertEquals(
                List.of("a"),
                ids(run(aloud, read("1", 0), correct("2", "1", "a", false, null, 60 * S))
                        .open()));
    }

    @Test
    void what_was_read_aloud_gives_no_value() {
        Checklist asks = list(Moment.AFTER_LANDING, false, value("count", false, ItemAnswer.COUNT));
        assertFalse(run(asks, read("1", 0)).isComplete());
    }

    @Test
    void a_tick_of_an_item_that_this_revision_lacks_is_kept_and_does_nothing() {
        Run run = run(landing(), tick("1", "gone", 0));
        assertEquals(4, run.open().size());
        assertEquals(1, run.strays().size());
        assertEquals(
                List.of(),
                run(landing(), tick("1", "held", 0), back("2", "1", 1)).strays());
    }

    @Test
    void a_fact_that_comes_twice_came_once() {
        Run run = run(landing(), tick("1", "held", 0), tick("1", "held", 0));
        assertEquals(1, state(run, 0).counted().size());
    }

    @ParameterizedTest
    @ValueSource(longs = {5, 17, 91})
    void the_order_of_arrival_plays_no_part(long seed) {
        List<RunFact> facts = new ArrayList<>(List.of(
                tick("1", "held", 0),
                tick("2", "held", null, S, "tomek"),
                back("3", "1", 2 * S),
                skip("4", "look", 3 * S),
                tick("5", "count", "12", 4 * S, "ines"),
                correct("6", "5", "count", true, "21", 60 * S),
                reopen("7", "held", 70 * S),
                tick("8", "motor", 80 * S),
                tick("9", "held", 90 * S)));
        List<StepState> inOrder = Run.of(landing(), facts, ListFixture.PAUSES).states();
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            Collections.shuffle(facts, random);
            assertEquals(inOrder, Run.of(landing(), facts, ListFixture.PAUSES).states(), "seed " + seed);
        }
    }
}
