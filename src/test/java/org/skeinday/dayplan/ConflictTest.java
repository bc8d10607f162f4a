package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ConflictTest {
    private static final TimeWords MINUTES = new TimeWords(time -> "minute " + time, span -> span + " min");

    /** Two attempts of 4 on one station by 7, which is 1 too early, among others that fit. */
    private static PlanProblem late() {
        return PlanProblem.of(
                List.of(
                        Task.of("other", 3).needing("lane", 1),
                        Task.of("a", 4).needing("station", 1).within(null, 7L).inChain("first"),
                        Task.of("a fly", 1).needing("lane", 1).inChain("first"),
                        Task.of("b", 4).needing("station", 1).within(null, 7L)),
                List.of(new Resource("station", 1), new Resource("lane", 1)),
                List.of(Lag.between("a", "a fly", 4L, 6L)));
    }

    private static Outcome plan(PlanProblem problem) {
        return Planner.plan(problem, Goal.SLACK, Effort.live());
    }

    private static List<String> ids(Outcome outcome) {
        return outcome.conflict().stream().map(Requirement::id).toList();
    }

    @Test
    void only_what_conflicts_is_named_in_words() {
        Outcome outcome = plan(late());
        assertEquals(Outcome.Status.INFEASIBLE, outcome.status());
        assertEquals(List.of("a", "b", "station"), ids(outcome));
        assertEquals(
                List.of("a takes 4 min, ends by minute 7", "b takes 4 min, ends by minute 7", "of station there is 1"),
                WhyNot.words(late(), outcome.conflict(), MINUTES));
        assertTrue(Conflict.of(late(), Effort.live()).irreducible());
    }

    @Test
    void ways_out_are_ranked_the_least_that_will_do_and_an_attempt_falls_as_a_whole() {
        List<WayOut> ways = WaysOut.of(late(), plan(late()).conflict(), Effort.live());
        assertEquals(
                List.of(
                        "1 more of station",
                        "let a end up to 1 min later",
                        "let b end up to 1 min later",
                        "leave out b",
                        "leave out first"),
                ways.stream().map(way -> way.words(late(), MINUTES)).toList());
        for (WayOut way : ways) {
            PlanProblem after = WaysOut.taken(late(), way);
            assertEquals(List.of(), PlanCheck.faults(after, plan(after).plan()), way.toString());
        }
    }

    @Test
    void lags_and_fixed_tasks_are_part_of_a_conflict() {
        PlanProblem problem = PlanProblem.of(
                List.of(Task.of("wind", 4).fixedAt(2L), Task.of("fly", 1).within(null, 6L), Task.of("far", 1)),
                List.of(),
                List.of(Lag.between("wind", "fly", 4L, 6L), Lag.between("fly", "far", 1L, null)));
        Outcome outcome = plan(problem);
        assertEquals(List.of("wind", "fly", "wind->fly"), ids(outcome));
        assertEquals(
                List.of(
                        "wind takes 4 min, is fixed at minute 2",
                        "fly takes 1 min, ends by minute 6",
                        "fly starts at least 4 min and at most 6 min after the start of wind"),
                WhyNot.words(problem, outcome.conflict(), MINUTES));
        assertEquals(
                List.of("let fly end up to 1 min later", "leave out fly"),
                WaysOut.of(problem, outcome.conflict(), Effort.live()).stream()
                        .map(way -> way.words(problem, MINUTES))
                        .toList());
    }

    @Test
    void nobody_cleared_and_motors_that_rest_are_conflicts_too() {
        Task wind = Task.of("wind", 4).needingPerson(PersonNeed.anyone("winds")).within(null, 9L);
        PlanProblem nobody = PlanProblem.of(List.of(wind), List.of(), List.of())
                .withPeople(List.of(Person.cleared("sam", Set.of("loads"))), List.of());
        assertEquals(List.of("wind", "winds"), ids(plan(nobody)));
        assertEquals(
                "cleared for winds: nobody",
                WhyNot.words(nobody, plan(nobody).conflict(), MINUTES).get(1));
        assertEquals(
                List.of("one more person cleared for winds", "leave out wind"),
                WaysOut.of(nobody, plan(nobody).conflict(), Effort.live()).stream()
                        .map(way -> way.words(nobody, MINUTES))
                        .toList());
        Task one = Task.of("one", 4).takingOneOf(Map.of("m1", 0)).within(null, 9L);
        Task two = Task.of("two", 4).takingOneOf(Map.of("m1", 0)).within(null, 9L);
        PlanProblem rest =
                PlanProblem.of(List.of(one, two), List.of(), List.of()).withMotorRest(Map.of("m1", 2L));
        assertEquals(List.of("one", "two", "motors"), ids(plan(rest)));
    }

    @Test
    void when_no_single_way_will_do_the_windows_that_together_will_are_told() {
        PlanProblem twice = PlanProblem.of(
                List.of(Task.of("a", 4).within(null, 3L), Task.of("b", 4).within(null, 2L)), List.of(), List.of());
        assertEquals(List.of("b"), ids(plan(twice)), "one of the two is enough to have no plan");
        assertEquals(
                List.of(new WayOut(WayOut.Kind.END_LATER_TOGETHER, Map.of("a", 1L, "b", 2L))),
                WaysOut.of(twice, plan(twice).conflict(), Effort.live()));
    }
}
