package org.skeinday.dayplan;

import java.util.List;
import java.util.OptionalLong;

/**
 * How good a plan is, in the order of the goals.
 *
 * @param headline what is proven: the smallest time in hand negated, or the end of the last task; less is better
 * @param preferences missed steps of soft lags by weight: holds and wishes
 * @param motors how little the motors taken are wanted
 * @param handOvers pairs of tasks that one person should do, where the second has somebody new
 */
public record Figures(long headline, long preferences, long motors, long handOvers) {
    public static Figures of(PlanProblem problem, Goal goal, DayPlan plan) {
        return new Figures(
                goal == Goal.MAKESPAN
                        ? lastEnd(problem, plan)
                        : -smallestInHand(problem, plan, false).orElse(0),
                preferences(problem, plan),
                motors(problem, plan),
                handOvers(problem, plan));
    }

    /** In the order of the goals: a better one before outweighs all after it. */
    public boolean betterThan(Figures other) {
        List<Long> mine = inOrder();
        List<Long> theirs = other.inOrder();
        for (int i = 0; i < mine.size(); i++) {
            int order = Long.compare(mine.get(i), theirs.get(i));
            if (order != 0) {
                return order < 0;
            }
        }
        return false;
    }

    private List<Long> inOrder() {
        return List.of(headline, preferences, motors, handOvers);
    }

    static long lastEnd(PlanProblem problem, DayPlan plan) {
        return problem.tasks().stream()
                .mapToLong(task -> plan.start(task.id()) + task.duration())
                .max()
                .orElse(0);
    }

    /** @param all those, too, that are fixed and cannot be moved @return empty when no task has a window that closes */
    static OptionalLong smallestInHand(PlanProblem problem, DayPlan plan, boolean all) {
        long least = Long.MAX_VALUE;
        for (Task task : problem.tasks()) {
            Long until = task.latestEnd();
            if (until != null && (all || !task.isFixed())) {
                least = Math.min(least, until - task.duration() - plan.start(task.id()));
            }
        }
        return least == Long.MAX_VALUE ? OptionalLong.empty() : OptionalLong.of(least);
    }

    private static long preferences(PlanProblem problem, DayPlan plan) {
        return problem.lags().stream()
                .filter(lag -> !lag.isHard())
                .mapToLong(lag -> lag.weight() * lag.missed(plan.start(lag.to()) - plan.start(lag.from())))
                .sum();
    }

    private static long motors(PlanProblem problem, DayPlan plan) {
        long dislike = 0;
        for (Task task : problem.tasks()) {
            String motor = plan.motors().get(task.id());
            dislike += motor == null ? 0 : task.motors().getOrDefault(motor, 0);
        }
        return dislike;
    }

    static long handOvers(PlanProblem problem, DayPlan plan) {
        return problem.together().stream()
                .filter(pair -> !plan.peopleOf(pair.first()).containsAll(plan.peopleOf(pair.second())))
                .count();
    }
}
