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
 * @param change steps that starts move from the plan in force, and motors and people that become others; a task that is
 *     new there counts its start, as all do in a first plan
 */
public record Figures(long headline, long preferences, long motors, long handOvers, long change) {
    public static Figures of(PlanProblem problem, Goal goal, DayPlan plan) {
        return new Figures(
                headline(problem, goal, plan),
                preferences(problem, plan),
                motors(problem, plan),
                handOvers(problem, plan),
                change(problem, plan));
    }

    static long headline(PlanProblem problem, Goal goal, DayPlan plan) {
        return goal == Goal.MAKESPAN
                ? lastEnd(problem, plan)
                : -smallestInHand(problem, plan, false).orElse(0);
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
        return List.of(headline, preferences, motors, handOvers, change);
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

    private static long handOvers(PlanProblem problem, DayPlan plan) {
        return handedOver(problem, plan).size();
    }

    /** Pairs whose second task has somebody who was not in the first, as far as anybody is known there. */
    static List<Together> handedOver(PlanProblem problem, DayPlan plan) {
        return problem.together().stream()
                .filter(pair -> !plan.peopleOf(pair.first()).isEmpty())
                .filter(pair -> !plan.peopleOf(pair.first()).containsAll(plan.peopleOf(pair.second())))
                .toList();
    }

    private static long change(PlanProblem problem, DayPlan plan) {
        DayPlan inForce = problem.inForce();
        if (inForce == null) {
            return plan.starts().values().stream().mapToLong(Long::longValue).sum();
        }
        long change = 0;
        for (Task task : problem.tasks()) {
            String id = task.id();
            Long before = inForce.starts().get(id);
            change += before == null ? plan.start(id) : Math.abs(plan.start(id) - before);
            String motor = inForce.motors().get(id);
            change += motor == null || motor.equals(plan.motors().get(id)) ? 0 : 1;
            change += otherPeople(inForce.peopleOf(id), plan.peopleOf(id));
        }
        return change;
    }

    private static long otherPeople(List<String> before, List<String> now) {
        long others = 0;
        for (int i = 0; i < Math.min(before.size(), now.size()); i++) {
            others += before.get(i).equals(now.get(i)) ? 0 : 1;
        }
        return others;
    }
}
