package org.skeinday.dayplan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each name shows its seed. */
class PlannerProperties {
    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    private static Outcome plan(PlanProblem problem, Goal goal) {
        return Planner.plan(problem, goal, Effort.live());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void the_objective_is_that_of_trying_everything(long seed) {
        PlanProblem problem = TinyProblem.of(seed);
        for (Goal goal : Goal.values()) {
            Outcome outcome = plan(problem, goal);
            OptionalLong expected = BruteForce.best(problem, goal, TinyProblem.LAST_START);
            assertEquals(expected, outcome.objective(), () -> "seed " + seed + " " + goal + " " + problem);
            assertEquals(expected.isPresent() ? Outcome.Status.OPTIMAL : Outcome.Status.INFEASIBLE, outcome.status());
        }
    }

    /** A first plan, then one after a plan in force that is not good: hand-overs come before change in both. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void all_goals_are_those_of_trying_everything_in_their_order(long seed) {
        PlanProblem problem = TinyProblem.withWishes(seed);
        DayPlan first = plan(problem, Goal.SLACK).plan();
        assertEquals(BestOfAll.of(problem, TinyProblem.LAST_START), figures(problem, first), () -> "seed " + seed);
        if (first != null) {
            PlanProblem again = problem.withInForce(TinyProblem.shuffled(problem, first, seed));
            DayPlan next = plan(again, Goal.SLACK).plan();
            assertEquals(BestOfAll.of(again, TinyProblem.LAST_START), figures(again, next), () -> "seed " + seed);
        }
    }

    private static Figures figures(PlanProblem problem, DayPlan plan) {
        return plan == null ? null : Figures.of(problem, Goal.SLACK, plan);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void a_plan_keeps_capacities_lags_windows_and_what_is_fixed(long seed) {
        PlanProblem problem = TinyProblem.of(seed);
        DayPlan plan = plan(problem, Goal.SLACK).plan();
        if (plan != null) {
            assertEquals(List.of(), PlanCheck.faults(problem, plan), () -> "seed " + seed);
            problem.tasks().stream()
                    .filter(Task::isFixed)
                    .forEach(task -> assertEquals(task.fixedStart(), plan.start(task.id())));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void the_same_input_gives_the_same_plan_and_no_news_change_nothing(long seed) {
        PlanProblem problem = TinyProblem.of(seed);
        DayPlan first = plan(problem, Goal.SLACK).plan();
        assertEquals(first, plan(TinyProblem.of(seed), Goal.SLACK).plan());
        if (first != null) {
            Outcome again = plan(problem.withInForce(first), Goal.SLACK);
            assertEquals(first, again.plan(), () -> "seed " + seed);
            assertTrue(again.keptInForce());
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void a_conflict_conflicts_and_is_kept_without_any_one_of_it(long seed) {
        PlanProblem problem = TinyProblem.of(seed);
        Outcome outcome = plan(problem, Goal.SLACK);
        if (outcome.status() != Outcome.Status.INFEASIBLE) {
            return;
        }
        List<Requirement> conflict = outcome.conflict();
        assertTrue(!conflict.isEmpty());
        assertTrue(!BruteForce.possible(Conflict.only(problem, conflict), TinyProblem.LAST_START), "seed " + seed);
        for (Requirement one : conflict) {
            List<Requirement> others = new ArrayList<>(conflict);
            others.remove(one);
            PlanProblem rest = Conflict.only(problem, others);
            assertTrue(BruteForce.possible(rest, 20), () -> "seed " + seed + ": needless is " + one);
        }
        for (WayOut way : WaysOut.of(problem, conflict, Effort.live())) {
            Outcome after = plan(WaysOut.taken(problem, way), Goal.SLACK);
            assertEquals(Outcome.Status.OPTIMAL, after.status(), () -> "seed " + seed + ": " + way);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void a_task_that_starts_at_its_latest_safe_start_still_has_a_plan(long seed) {
        PlanProblem problem = TinyProblem.of(seed);
        DayPlan plan = plan(problem, Goal.SLACK).plan();
        if (plan == null) {
            return;
        }
        InHand inHand = InHand.of(problem, plan);
        for (Task task : problem.tasks()) {
            if (!task.isFixed() && inHand.latestSafeStart(task.id()).isPresent()) {
                long latest = inHand.latestSafeStart(task.id()).getAsLong();
                assertTrue(latest >= plan.start(task.id()), () -> "seed " + seed + " " + task.id());
                PlanProblem late = problem.withTasks(problem.tasks().stream()
                        .map(other -> other.id().equals(task.id()) ? other.fixedAt(latest) : other)
                        .toList());
                assertTrue(BruteForce.possible(late, 12), () -> "seed " + seed + " " + task.id() + " at " + latest);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void after_news_only_a_plan_that_no_longer_holds_or_a_strictly_better_one_replaces(long seed) {
        PlanProblem problem = TinyProblem.of(seed);
        DayPlan inForce = plan(problem, Goal.SLACK).plan();
        if (inForce == null) {
            return;
        }
        SplittableRandom random = new SplittableRandom(seed);
        Task slower = problem.tasks().get(random.nextInt(problem.tasks().size()));
        PlanProblem news = problem.withTasks(problem.tasks().stream()
                        .map(task -> task.equals(slower) ? task.lasting(task.duration() + 1) : task)
                        .toList())
                .withInForce(inForce);
        Outcome outcome = plan(news, Goal.SLACK);
        DayPlan chosen = outcome.plan();
        if (chosen == null) {
            assertEquals(OptionalLong.empty(), BruteForce.best(news, Goal.SLACK, TinyProblem.LAST_START));
            return;
        }
        assertNotNull(chosen);
        boolean holds = PlanCheck.faults(news, inForce).isEmpty();
        Figures before = holds ? Figures.of(news, Goal.SLACK, inForce) : null;
        assertTrue(
                outcome.keptInForce()
                        || !holds
                        || Figures.of(news, Goal.SLACK, chosen).betterThan(before),
                () -> "seed " + seed);
    }

    /** Found out here step by step, not by the program's own check. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void lags_and_windows_are_kept_what_is_fixed_stays_and_no_place_or_person_is_taken_twice(long seed) {
        PlanProblem problem = TinyProblem.withWishes(seed);
        DayPlan plan = plan(problem, Goal.SLACK).plan();
        if (plan == null) {
            return;
        }
        for (Task task : problem.tasks()) {
            long start = plan.start(task.id());
            assertTrue(task.fixedStart() == null || task.fixedStart() == start, () -> "seed " + seed + task);
            assertTrue(task.latestEnd() == null || start + task.duration() <= task.latestEnd(), () -> "seed " + seed);
        }
        for (Lag lag : problem.lags()) {
            long apart = plan.start(lag.to()) - plan.start(lag.from());
            boolean kept = (lag.min() == null || apart >= lag.min()) && (lag.max() == null || apart <= lag.max());
            assertTrue(lag.weight() > 0 || kept, () -> "seed " + seed + lag);
        }
        for (long t = 0; t < 20; t++) {
            long now = t;
            List<Task> running = problem.tasks().stream()
                    .filter(task -> plan.start(task.id()) <= now && now < plan.start(task.id()) + task.duration())
                    .toList();
            for (Resource resource : problem.resources()) {
                long used = running.stream()
                        .mapToLong(task -> task.needs().getOrDefault(resource.id(), 0))
                        .sum();
                assertTrue(used <= resource.capacity(), () -> "seed " + seed + " at " + now);
            }
            List<String> busy = running.stream()
                    .flatMap(task -> plan.people().getOrDefault(task.id(), List.of()).stream())
                    .toList();
            assertEquals(busy.size(), busy.stream().distinct().count(), () -> "seed " + seed + " at " + now);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void to_ease_a_plan_breaks_nothing(long seed) {
        PlanProblem problem = TinyProblem.withWishes(seed);
        DayPlan plan = plan(problem, Goal.SLACK).plan();
        if (plan != null) {
            DayPlan eased = LatestStarts.of(problem, plan);
            assertEquals(List.of(), PlanCheck.faults(problem, eased), () -> "seed " + seed);
        }
    }
}
