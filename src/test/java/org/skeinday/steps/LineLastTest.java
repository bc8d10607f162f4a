package org.skeinday.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.steps.ListFixture.list;
import static org.skeinday.steps.ListFixture.ok;
import static org.skeinday.steps.ListFixture.reopen;
import static org.skeinday.steps.ListFixture.run;
import static org.skeinday.steps.ListFixture.tick;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LineLastTest {
    private static final Checklist BEFORE = list(
            Moment.BEFORE_WINDING,
            false,
            ok("rings", true),
            ok(Step.EYES, true),
            ok(Step.LINE, true),
            ok("roles", false));
    private static final Ticked RINGS = tick("1", "rings", 1);
    private static final Ticked EYES = tick("2", Step.EYES, 2);
    private static final Ticked LINE = tick("3", Step.LINE, 3);

    private static GatePassed pass(long at, String... steps) {
        return new GatePassed("p", "attempt", "adult", "tugged by her", List.of(steps), at, "t", null);
    }

    private static Optional<String> line(Run run, GatePassed... passes) {
        return LineLast.refuses(Optional.empty(), run, Step.LINE, List.of(), List.of(passes));
    }

    @Test
    void the_line_waits_for_all_that_is_critical_and_the_first_of_it_is_named() {
        assertEquals(
                Optional.of("The line comes last, just before winding. Before it: \u201cDo rings\u201d and 1 more"),
                line(run(BEFORE)));
        assertEquals(
                Optional.of("The line comes last, just before winding. Before it: \u201cDo eye-protection\u201d"),
                line(run(BEFORE, RINGS)));
        assertEquals(Optional.empty(), line(run(BEFORE, RINGS, EYES)), "what is not critical is not waited for");
        assertTrue(line(run(BEFORE, RINGS, EYES, reopen("4", "rings", 9))).isPresent());
    }

    @Test
    void every_other_item_is_ticked_in_any_order_and_no_other_list_has_a_line() {
        assertEquals(
                Optional.empty(), LineLast.refuses(Optional.empty(), run(BEFORE), Step.EYES, List.of(), List.of()));
        Checklist place = list(Moment.WINDING_PLACE, false, ok("mount", true), ok(Step.LINE, true));
        assertEquals(Optional.empty(), line(run(place)));
    }

    @Test
    void the_line_does_not_wait_for_what_an_adult_answered_for_but_always_for_eyes() {
        assertEquals(Optional.empty(), line(run(BEFORE, EYES), pass(5, "rings")));
        assertTrue(line(run(BEFORE, RINGS), pass(5, Step.EYES)).isPresent());
        assertTrue(line(run(BEFORE, EYES, reopen("4", "rings", 9)), pass(5, "rings"))
                .isPresent());
    }

    @Test
    void what_is_asked_again_after_an_interruption_comes_before_the_line() {
        Run done = run(BEFORE, RINGS, EYES);
        assertTrue(LineLast.refuses(Optional.empty(), done, Step.LINE, List.of(ok("rings", true)), List.of())
                .isPresent());
    }

    @Test
    void the_line_is_asked_again_when_something_critical_is_ticked_after_it() {
        Run undone = run(BEFORE, EYES, LINE);
        assertTrue(LineLast.opensAgain(undone, undone, "rings", 4, List.of()));
        assertFalse(
                LineLast.opensAgain(undone, undone, "rings", 2, List.of()), "it was seen to before, and came in late");
        assertFalse(LineLast.opensAgain(undone, undone, "rings", 4, List.of(pass(3, "rings"))), "it was answered for");
        assertFalse(LineLast.opensAgain(undone, undone, "roles", 4, List.of()));
        Run whole = run(BEFORE, RINGS, EYES, LINE);
        assertFalse(LineLast.opensAgain(whole, whole, "rings", 4, List.of()), "a second witness");
        assertFalse(LineLast.opensAgain(run(BEFORE, EYES), run(BEFORE, EYES), "rings", 4, List.of()));
    }

    private static final Checklist PLACE = list(Moment.WINDING_PLACE, false, ok("pull", true), ok("tape", false));

    @Test
    void the_line_waits_for_what_is_critical_at_its_winding_place_first() {
        Run done = run(BEFORE, RINGS, EYES);
        assertEquals(
                Optional.of("The line comes last, just before winding. Before it: \u201cDo pull\u201d"),
                LineLast.refuses(Optional.of(run(PLACE)), done, Step.LINE, List.of(), List.of()));
        assertEquals(
                Optional.of("The line comes last, just before winding. Before it: \u201cDo pull\u201d and 1 more"),
                LineLast.refuses(Optional.of(run(PLACE)), run(BEFORE, EYES), Step.LINE, List.of(), List.of()));
        assertEquals(
                Optional.empty(),
                LineLast.refuses(Optional.of(run(PLACE)), done, Step.LINE, List.of(), List.of(pass(5, "pull"))));
        assertEquals(
                Optional.empty(),
                LineLast.refuses(Optional.of(run(PLACE, tick("5", "pull", 2))), done, Step.LINE, List.of(), List.of()));
    }

    @Test
    void what_is_ticked_at_the_winding_place_after_the_line_makes_it_be_asked_again() {
        Run all = run(BEFORE, RINGS, EYES, LINE);
        assertTrue(LineLast.opensAgain(run(PLACE), all, "pull", 4, List.of()));
        assertFalse(LineLast.opensAgain(run(PLACE), all, "tape", 4, List.of()), "not critical");
        assertFalse(LineLast.opensAgain(run(PLACE), all, "pull", 2, List.of()), "seen to before, and came in late");
        assertFalse(LineLast.opensAgain(run(PLACE), run(BEFORE, RINGS, EYES), "pull", 4, List.of()), "no line yet");
    }
}
