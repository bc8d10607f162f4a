package org.skeinday.dayplan;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What a plan costs in the solver's terms, each to be made as small as can be: {@link Figures} counts the same of a plan. */
final class PlanCosts {
    private final PlanModel model;
    private final PlanProblem problem;

    PlanCosts(PlanModel model, PlanProblem problem) {
        this.model = model;
        this.problem = problem;
    }

    /** What the goal makes as small as can be; empty when nothing has a window that closes. */
    Sum headline(Goal goal) {
        Sum sum = new Sum();
        if (goal == Goal.MAKESPAN) {
            int end = model.sat.variable(Horizon.first(problem), model.horizon() + Horizon.longest(problem));
            problem.tasks()
                    .forEach(task -> model.sat.atLeast(Sum.of(end).plus(model.start(task.id()), -1), task.duration()));
            return sum.plus(end, 1);
        }
        List<Task> moving = problem.tasks().stream()
                .filter(task -> task.latestEnd() != null && !task.isFixed())
                .toList();
        if (moving.isEmpty()) {
            return sum;
        }
        int least = model.sat.variable(0, 3 * PlanTime.LONGEST);
        moving.forEach(task -> model.sat.atMost(
                Sum.of(least).plus(model.start(task.id()), 1),
                Objects.requireNonNull(task.latestEnd()) - task.duration()));
        return sum.plus(least, -1);
    }

    /** Steps that preferred lags miss, by weight. */
    Sum preferences() {
        Sum sum = new Sum();
        for (Lag lag : problem.lags()) {
            if (lag.isHard()) {
                continue;
            }
            int missed = model.sat.variable(0, lag.missed(span()) + lag.missed(-span()));
            if (lag.min() != null) {
                model.sat.atLeast(model.between(lag).plus(missed, 1), lag.min());
            }
            if (lag.max() != null) {
                model.sat.atMost(model.between(lag).plus(missed, -1), lag.max());
            }
            sum.plus(missed, lag.weight());
        }
        return sum;
    }

    /** What motors are taken before better ones, by weight. */
    Sum motorDislikes() {
        Sum sum = new Sum();
        for (Task task : problem.tasks()) {
            model.motors().getOrDefault(task.id(), Map.of()).forEach((motor, choice) -> {
                int dislike = task.motors().getOrDefault(motor, 0);
                if (dislike > 0) {
                    sum.plus(choice, dislike);
                }
            });
        }
        return sum;
    }

    /** As {@link Figures#change} counts, people aside. */
    Sum change() {
        DayPlan inForce = problem.inForce();
        Sum sum = new Sum();
        model.starts().forEach((id, start) -> {
            Long before = inForce == null ? null : inForce.starts().get(id);
            if (before == null) {
                sum.plus(start, 1);
            } else {
                sum.plus(moved(start, before), 1);
            }
        });
        if (inForce != null) {
            model.motors()
                    .forEach((id, taken) -> otherMotor(taken, inForce.motors().get(id), sum));
        }
        return sum;
    }

    /** @return the steps that a start lies from where it was */
    private int moved(int start, long before) {
        int moved = model.sat.variable(0, span() + Math.abs(before));
        model.sat.atLeast(Sum.of(moved).plus(start, 1), before);
        model.sat.atLeast(Sum.of(moved).plus(start, -1), -before);
        return moved;
    }

    private static void otherMotor(Map<String, Integer> taken, @Nullable String before, Sum sum) {
        taken.forEach((motor, choice) -> {
            if (before != null && !motor.equals(before)) {
                sum.plus(choice, 1);
            }
        });
    }

    private long span() {
        return model.horizon() - Horizon.first(problem);
    }
}
