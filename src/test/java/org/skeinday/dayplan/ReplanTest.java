package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Two flights on one lane, each with a window until 20. */
class ReplanTest {
    private static final PlanProblem PROBLEM = PlanProblem.of(
            List.of(
                    Task.of("a", 4).needing("lane", 1).within(null, 20L),
                    Task.of("b", 4).needing("lane", 1).within(null, 20L)),
            List.of(new Resource("lane", 1)),
            List.of());

    private static DayPlan at(long a, long b) {
        return DayPlan.ofStarts(Map.of("a", a, "b", b));
    }

    private static Outcome replan(PlanProblem problem, DayPlan inForce) {
        return Planner.plan(problem.withInForce(inForce), Goal.SLACK, Effort.live());
    }

    @Test
    void a_plan_that_is_as_good_stays_whoever_goes_first() {
        for (DayPlan inForce : List.of(at(0, 4), at(4, 0), at(4, 0))) {
            Outcome outcome = replan(PROBLEM, inForce);
            assertEquals(inForce, outcome.plan());
            assertTrue(outcome.keptInForce());
        }
        assertEquals(at(3, 8), Replan.choose(PROBLEM.withInForce(at(3, 8)), Goal.SLACK, at(8, 2)));
    }

    @Test
    void a_strictly_better_plan_replaces_and_moves_as_little_as_can_be() {
        Outcome outcome = replan(PROBLEM, at(9, 0));
        assertEquals(at(4, 0), outcome.plan());
        assertFalse(outcome.keptInForce());
        assertEquals(at(4, 0), Replan.choose(PROBLEM.withInForce(at(9, 0)), Goal.SLACK, at(4, 0)));
    }

    @Test
    void a_plan_that_no_longer_holds_is_replaced_even_by_a_worse_one() {
        PlanProblem news = PROBLEM.withTasks(List.of(
                Task.of("a", 4).needing("lane", 1).fixedAt(3L), PROBLEM.tasks().get(1)));
        Outcome outcome = replan(news, at(0, 4));
        assertEquals(at(3, 7), outcome.plan());
        assertFalse(outcome.keptInForce());
    }

    @Test
    void what_is_asked_no_more_leaves_the_plan_and_what_is_new_comes_in() {
        PlanProblem fewer = PlanProblem.of(PROBLEM.tasks().subList(1, 2), PROBLEM.resources(), List.of());
        assertEquals(DayPlan.ofStarts(Map.of("b", 0L)), replan(fewer, at(4, 0)).plan());
        assertEquals(
                at(4, 0), replan(PROBLEM, DayPlan.ofStarts(Map.of("b", 0L))).plan());
    }

    @Test
    void preferences_then_motors_then_hand_overs_then_change_decide_between_equals() {
        assertTrue(new Figures(-9, 5, 5, 5, 5).betterThan(new Figures(-8, 0, 0, 0, 0)));
        assertTrue(new Figures(-9, 4, 9, 9, 9).betterThan(new Figures(-9, 5, 0, 0, 0)));
        assertTrue(new Figures(-9, 4, 1, 9, 9).betterThan(new Figures(-9, 4, 2, 0, 0)));
        assertTrue(new Figures(-9, 4, 1, 0, 9).betterThan(new Figures(-9, 4, 1, 1, 0)));
        assertTrue(new Figures(-9, 4, 1, 0, 8).betterThan(new Figures(-9, 4, 1, 0, 9)));
        assertFalse(new Figures(-9, 4, 1, 0, 8).betterThan(new Figures(-9, 4, 1, 0, 8)));
    }

    @Test
    void a_task_moves_so_that_one_person_does_both_and_no_further() {
        Task first = Task.of("first", 4).needingPerson(new PersonNeed("winds", "kim"));
        Task second = Task.of("second", 4).needingPerson(PersonNeed.anyone("winds"));
        Task last = Task.of("last", 2).within(null, 30L);
        PlanProblem problem = PlanProblem.of(List.of(), List.of(), List.of())
                .withPeople(
                        List.of(Person.cleared("kim", Set.of("winds")), Person.cleared("sam", Set.of("winds"))),
                        List.of())
                .withTasks(List.of(first, second, last))
                .withLags(List.of(Lag.between("first", "last", 4L, 9L)));
        problem = problem.withPeople(problem.people(), List.of(new Together("first", "second")));
        DayPlan inForce = new DayPlan(
                new TreeMap<>(Map.of("first", 0L, "second", 1L, "last", 4L)),
                new TreeMap<>(Map.of("first", List.of("kim"), "second", List.of("sam"))),
                new TreeMap<>());
        assertEquals(1, Figures.of(problem, Goal.SLACK, inForce).handOvers());
        Outcome outcome = replan(problem, inForce);
        assertEquals(List.of("kim"), outcome.plan().peopleOf("second"));
        assertEquals(
                DayPlan.ofStarts(Map.of("first", 0L, "second", 4L, "last", 4L)).starts(),
                outcome.plan().starts());
        assertEquals(
                new Figures(-24, 0, 0, 0, 4), Figures.of(problem.withInForce(inForce), Goal.SLACK, outcome.plan()));
    }

    @Test
    void holds_are_short_the_best_motor_goes_where_it_counts_and_one_person_does_both() {
        Task first = Task.of("practice", 4)
                .takingOneOf(Map.of("best", 0, "spare", 1))
                .needingPerson(PersonNeed.anyone("winds"));
        Task second = Task.of("official", 4)
                .takingOneOf(Map.of("best", 0, "spare", 10))
                .needingPerson(PersonNeed.anyone("winds"))
                .within(4L, 40L);
        Task fly = Task.of("fly", 3).within(null, 60L);
        PlanProblem problem = PlanProblem.of(
                        List.of(first, second, fly),
                        List.of(),
                        List.of(
                                Lag.between("official", "fly", 4L, 30L),
                                Lag.preferred("official", "fly", null, 4L, 1),
                                Lag.between("practice", "official", 4L, null)))
                .withPeople(
                        List.of(Person.cleared("kim", Set.of("winds")), Person.cleared("sam", Set.of("winds"))),
                        List.of(new Together("practice", "official")))
                .withMotorRest(Map.of("best", 60L));
        Outcome outcome = Planner.plan(problem, Goal.SLACK, Effort.live());
        DayPlan plan = outcome.plan();
        Figures figures = Figures.of(problem, Goal.SLACK, plan);
        assertEquals(-32, figures.headline(), "the official one is over at 8, of 40");
        assertEquals(List.of(0L, 1L, 0L), List.of(figures.preferences(), figures.motors(), figures.handOvers()));
        assertEquals(new TreeMap<>(Map.of("practice", "spare", "official", "best")), plan.motors());
        assertEquals(plan.peopleOf("practice"), plan.peopleOf("official"));
        assertEquals(plan.start("official") + 4, plan.start("fly"));
    }

    @Test
    void after_news_what_is_late_is_pushed_back_in_its_order() {
        PlanProblem slower = PROBLEM.withTasks(
                List.of(PROBLEM.tasks().get(0).lasting(6), PROBLEM.tasks().get(1)));
        assertEquals(at(1, 7), PushedBack.of(slower, at(1, 5)));
        assertEquals(at(4, 0), PushedBack.of(slower, at(4, 0)), "nothing follows a");
        assertNull(PushedBack.of(slower, DayPlan.ofStarts(Map.of("a", 0L))), "b is new");
        PlanProblem fixed = PROBLEM.withTasks(List.of(
                PROBLEM.tasks().get(0).lasting(6), PROBLEM.tasks().get(1).fixedAt(5L)));
        assertNull(PushedBack.of(fixed, at(1, 5)), "b cannot be pushed");
        assertEquals(at(9, 5), replan(fixed, at(1, 5)).plan());
    }

    @Test
    void a_day_of_20_entries_is_planned_alike_each_time_and_no_news_change_nothing() {
        PlanProblem day = DayPlanBenchmark.day(20, 2);
        Outcome first = Planner.plan(day, Goal.SLACK, Effort.live());
        assertEquals(Outcome.Status.OPTIMAL, first.status());
        assertEquals(List.of(), PlanCheck.faults(day, first.plan()));
        assertEquals(
                first.plan(),
                Planner.plan(DayPlanBenchmark.day(20, 2), Goal.SLACK, Effort.live())
                        .plan());
        Outcome again = replan(day, first.plan());
        assertEquals(first.plan(), again.plan());
        assertTrue(again.keptInForce());
    }
}
