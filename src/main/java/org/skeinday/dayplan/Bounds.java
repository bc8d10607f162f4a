package org.skeinday.dayplan;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;

/**
 * What no plan can beat, from windows and hard lags alone, found without any solver: a plan that reaches it needs no
 * search and no proof.
 */
final class Bounds {
    private final PlanProblem problem;
    private final Map<String, Long> earliest;

    private Bounds(PlanProblem problem) {
        this.problem = problem;
        this.earliest = StartBounds.of(problem).earliest();
    }

    /** @return figures of which each is no more than that of any plan */
    static Figures of(PlanProblem problem, Goal goal) {
        Bounds bounds = new Bounds(problem);
        return new Figures(bounds.headline(goal), 0, bounds.motors(), 0, bounds.change());
    }

    private long headline(Goal goal) {
        DayPlan soonest = DayPlan.ofStarts(earliest);
        return Figures.headline(problem, goal, soonest);
    }

    private long motors() {
        return problem.tasks().stream()
                .filter(task -> task.duration() > 0)
                .flatMap(task -> task.motors().values().stream().min(Integer::compare).stream())
                .mapToLong(Integer::longValue)
                .sum();
    }

    /** What is planned sooner than it can start has to move by so much at least. */
    private long change() {
        DayPlan inForce = problem.inForce();
        Map<String, Long> before = inForce == null ? new HashMap<>() : inForce.starts();
        long sum = 0;
        for (Task task : problem.tasks()) {
            long soonest = Objects.requireNonNull(earliest.get(task.id()));
            Long planned = before.get(task.id());
            sum += planned == null ? soonest : Math.max(0, soonest - planned);
        }
        return sum;
    }
}
