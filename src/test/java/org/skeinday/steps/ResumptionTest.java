package org.skeinday.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.steps.ListFixture.MIN;
import static org.skeinday.steps.ListFixture.S;
import static org.skeinday.steps.ListFixture.ids;
import static org.skeinday.steps.ListFixture.landing;
import static org.skeinday.steps.ListFixture.reopen;
import static org.skeinday.steps.ListFixture.run;
import static org.skeinday.steps.ListFixture.skip;
import static org.skeinday.steps.ListFixture.tick;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ResumptionTest {
    private static final Run LEFT = run(landing(), tick("1", "held", 0), skip("2", "look", S));

    private static Resumption ines(long now) {
        return LEFT.resumedBy("ines", "tablet-ines", now).orElseThrow();
    }

    @Test
    void it_shows_the_last_item_done_and_the_time_away() {
        assertEquals("Last done: Do held. Away for 1 min.", ines(S + MIN).text());
        assertEquals("Last done: Do held. Away for 4 min.", ines(S + 4 * MIN).text());
    }

    @Test
    void from_five_minutes_on_critical_items_are_asked_again() {
        assertEquals(List.of(), ines(S + 5 * MIN - 1).askAgain());
        assertEquals(List.of("held"), ids(ines(S + 5 * MIN).askAgain()));
        assertEquals("interrupted for 5 min", ines(S + 5 * MIN).reason());
    }

    @Test
    void another_person_who_goes_on_is_asked_the_critical_items_at_once() {
        Resumption tomek = LEFT.resumedBy("tomek", "tablet-ines", S + MIN).orElseThrow();
        assertEquals(List.of("held"), ids(tomek.askAgain()));
        assertEquals("another person goes on after 1 min", tomek.reason());
        assertEquals(List.of(), ines(S + MIN).askAgain());
    }

    @Test
    void the_same_person_on_another_device_is_no_other() {
        assertEquals(
                List.of(),
                LEFT.resumedBy("ines", "tablet-2", S + MIN).orElseThrow().askAgain());
    }

    @Test
    void without_names_the_device_tells_who_goes_on() {
        Run run = run(landing(), tick("1", "held", null, 0, null));
        assertEquals(
                List.of(), run.resumedBy(null, "tablet-null", MIN).orElseThrow().askAgain());
        assertEquals(
                List.of("held"),
                ids(run.resumedBy(null, "tablet-2", MIN).orElseThrow().askAgain()));
        assertEquals(
                List.of("held"),
                ids(run.resumedBy("ines", "tablet-null", MIN).orElseThrow().askAgain()));
    }

    @Test
    void two_people_on_one_list_at_once_do_not_interrupt_each_other() {
        assertEquals(Optional.empty(), LEFT.resumedBy("tomek", "tablet-tomek", S + MIN - 1));
        assertEquals(Optional.empty(), LEFT.resumedBy("tomek", "tablet-tomek", S + 30 * S));
    }

    @Test
    void whoever_has_ticked_here_a_short_while_ago_is_no_other_and_who_answered_stays() {
        Run both = run(
                landing(), tick("1", "held", 0), tick("2", "motor", null, 40 * S, "tomek"), skip("3", "look", 2 * MIN));
        assertEquals(
                List.of(),
                both.resumedBy("tomek", "tablet-tomek", 4 * MIN).orElseThrow().askAgain());
        assertEquals(
                List.of("held", "motor"),
                ids(both.resumedBy("yrsa", "tablet-yrsa", 4 * MIN).orElseThrow().askAgain()),
                "who comes new has seen neither");
        assertEquals(
                List.of("held", "motor"),
                ids(both.resumedBy("tomek", "tablet-tomek", 40 * S + 5 * MIN)
                        .orElseThrow()
                        .askAgain()),
                "who was away too long has not either");
    }

    @Test
    void nothing_was_interrupted_before_the_first_tap_or_after_the_last() {
        assertEquals(Optional.empty(), run(landing()).resumedBy("ines", "t", 60 * MIN));
        assertEquals(Optional.empty(), complete().resumedBy("ines", "t", 60 * MIN));
    }

    private static Run complete(RunFact... more) {
        List<RunFact> all = new java.util.ArrayList<>(List.of(
                tick("1", "held", 0),
                tick("2", "motor", S),
                tick("3", "look", 2 * S),
                tick("4", "count", "12", 3 * S, "ines")));
        all.addAll(List.of(more));
        return Run.of(landing(), all, ListFixture.PAUSES);
    }

    @Test
    void a_list_that_was_done_and_had_an_item_reopened_was_not_interrupted() {
        assertEquals(Optional.empty(), complete(reopen("5", "held", 60 * MIN)).resumedBy("tomek", "t", 61 * MIN));
    }

    @Test
    void asked_again_once_the_items_are_open_and_not_asked_again_anew() {
        Run run = run(landing(), tick("1", "held", 0), reopen("2", "held", 6 * MIN));
        assertEquals("held", run.open().get(0).id());
        assertTrue(run.resumedBy("ines", "t", 7 * MIN).orElseThrow().askAgain().isEmpty());
        assertTrue(run(landing(), tick("1", "held", 0), reopen("2", "held", 6 * MIN), tick("3", "held", 7 * MIN))
                .resumedBy("ines", "t", 8 * MIN)
                .orElseThrow()
                .askAgain()
                .isEmpty());
    }
}
