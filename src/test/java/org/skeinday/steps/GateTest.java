package org.skeinday.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.skeinday.steps.ListFixture.ids;
import static org.skeinday.steps.ListFixture.list;
import static org.skeinday.steps.ListFixture.ok;
import static org.skeinday.steps.ListFixture.reopen;
import static org.skeinday.steps.ListFixture.run;
import static org.skeinday.steps.ListFixture.tick;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class GateTest {
    private static final Checklist PLACE =
            list(Moment.WINDING_PLACE, false, ok("mount", true), ok("distances", true), ok("lane", false));
    private static final Checklist BEFORE = list(
            Moment.BEFORE_WINDING,
            false,
            ok("direction", true),
            ok(Step.EYES, true),
            ok(Step.LINE, true),
            ok("roles", false));
    private static final Run PLACE_DONE = run(PLACE, tick("1", "mount", 0), tick("2", "distances", 0));
    private static final Run BEFORE_DONE =
            run(BEFORE, tick("2", "direction", 0), tick("3", Step.EYES, 0), tick("5", Step.LINE, 0));

    private static GatePassed pass(String id, long at, String... steps) {
        return new GatePassed(id, "attempt", "adult", "post is held by two", List.of(steps), at, "t", null);
    }

    @Test
    void winding_starts_when_all_that_is_critical_of_both_lists_is_done() {
        Gate.Verdict verdict = Gate.startWinding(PLACE_DONE, BEFORE_DONE, List.of());
        assertFalse(verdict.isHeld());
        assertEquals(Optional.empty(), verdict.refused());
    }

    @Test
    void what_is_open_besides_holds_nothing() {
        assertEquals(List.of("lane"), ids(PLACE_DONE.open()));
        assertEquals(List.of("roles"), ids(BEFORE_DONE.open()));
        assertFalse(Gate.startWinding(PLACE_DONE, BEFORE_DONE, List.of()).isHeld());
    }

    @Test
    void lists_that_nobody_began_hold_winding_and_name_what_is_open() {
        Gate.Verdict verdict = Gate.startWinding(run(PLACE), run(BEFORE), List.of());
        assertTrue(verdict.isHeld());
        assertEquals(
                Optional.of("Winding waits for \u201cDo mount\u201d and 4 more."
                        + " The supervising adult may answer with a reason, but never for eyes and line."),
                verdict.refused());
        assertEquals(
                Optional.of("Winding waits for \u201cDo distances\u201d. The supervising adult may answer for it with a"
                        + " reason."),
                Gate.startWinding(run(PLACE, tick("1", "mount", 0)), BEFORE_DONE, List.of())
                        .refused());
    }

    @Test
    void nobody_answers_for_eyes_and_line() {
        GatePassed all = pass("p", 10, "mount", "distances", "direction", Step.EYES, Step.LINE);
        Gate.Verdict verdict = Gate.startWinding(run(PLACE), run(BEFORE), List.of(all));
        assertEquals(List.of("mount", "distances", "direction"), ids(verdict.forTheAdult()));
        assertFalse(verdict.asksTheAdult(), "that part is answered for");
        assertTrue(verdict.isHeld());
        assertEquals(
                Optional.of(
                        "Winding waits for \u201cDo eye-protection\u201d and \u201cDo line\u201d. " + Gate.NO_OVERRIDE),
                verdict.refused());
        assertTrue(Gate.startWinding(PLACE_DONE, run(BEFORE, tick("3", Step.EYES, 0)), List.of(all))
                .isHeld());
        assertFalse(Gate.startWinding(run(PLACE), BEFORE_DONE, List.of(all)).isHeld());
    }

    @Test
    void a_list_of_before_in_which_the_line_has_no_item_waits_for_eyes_alone() {
        Checklist before = list(Moment.BEFORE_WINDING, false, ok("direction", true), ok(Step.EYES, true));
        assertFalse(Gate.startWinding(
                        PLACE_DONE, run(before, tick("3", Step.EYES, 0)), List.of(pass("p", 10, "direction")))
                .isHeld());
        assertTrue(Gate.startWinding(PLACE_DONE, run(before), List.of(pass("p", 10, Step.EYES)))
                .isHeld());
    }

    @Test
    void each_of_them_alone_holds_winding() {
        assertEquals(
                List.of("direction", Step.EYES, Step.LINE),
                ids(Gate.startWinding(PLACE_DONE, run(BEFORE), List.of()).open()));
        Run half = run(PLACE, tick("1", "mount", 0));
        assertEquals(
                List.of("distances"),
                ids(Gate.startWinding(half, BEFORE_DONE, List.of()).open()));
    }

    @Test
    void an_item_that_was_reopened_holds_winding_again() {
        Run moved = run(PLACE, tick("1", "mount", 0), tick("2", "distances", 0), reopen("4", "distances", 5));
        assertTrue(Gate.startWinding(moved, BEFORE_DONE, List.of()).isHeld());
    }

    @Test
    void the_supervising_adult_passes_it_with_a_reason() {
        GatePassed pass = pass("p", 10, "mount", "distances");
        Gate.Verdict verdict = Gate.startWinding(run(PLACE), BEFORE_DONE, List.of(pass));
        assertFalse(verdict.isHeld());
        assertEquals(Optional.of(pass), verdict.passed());
        assertEquals(List.of("mount", "distances"), ids(verdict.open()));
        assertThrows(
                IllegalArgumentException.class, () -> new GatePassed("p", "a", " ", "why", List.of(), 0, "t", null));
        assertThrows(
                IllegalArgumentException.class, () -> new GatePassed("p", "a", "adult", " ", List.of(), 0, "t", null));
    }

    @Test
    void what_opens_after_the_pass_is_not_passed() {
        assertTrue(Gate.startWinding(run(PLACE), BEFORE_DONE, List.of(pass("p", 10, "mount")))
                .isHeld());
    }

    @Test
    void a_pass_does_not_answer_for_what_was_asked_again_since() {
        GatePassed pass = pass("p", 10, "direction");
        Run passed = run(BEFORE, tick("3", Step.EYES, 0), tick("5", Step.LINE, 0));
        assertFalse(Gate.startWinding(PLACE_DONE, passed, List.of(pass)).isHeld());
        Run again = run(BEFORE, reopen("6", "direction", 20), tick("3", Step.EYES, 21), tick("5", Step.LINE, 22));
        assertTrue(Gate.startWinding(PLACE_DONE, again, List.of(pass)).isHeld());
        assertFalse(Gate.startWinding(PLACE_DONE, again, List.of(pass, pass("q", 20, "direction")))
                .isHeld());
    }

    @Test
    void the_latest_of_two_passes_is_named() {
        GatePassed later = pass("q", 20, "mount", "distances");
        List<GatePassed> both = List.of(later, pass("p", 10, "mount", "distances"));
        assertEquals(
                Optional.of(later),
                Gate.startWinding(run(PLACE), BEFORE_DONE, both).passed());
    }

    @Test
    void a_pass_that_is_not_needed_is_not_named() {
        assertEquals(
                Optional.empty(),
                Gate.startWinding(PLACE_DONE, BEFORE_DONE, List.of(pass("p", 10, "mount")))
                        .passed());
    }

    @Test
    void the_gate_takes_no_other_list() {
        assertThrows(IllegalArgumentException.class, () -> Gate.startWinding(BEFORE_DONE, PLACE_DONE, List.of()));
    }
}
