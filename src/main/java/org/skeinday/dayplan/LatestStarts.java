package org.skeinday.dayplan;

import java.util.Map;
import java.util.TreeMap;

/**
 * A plan in which tasks that hold nothing start no sooner than preferred before what follows them: to move them costs
 * no search, since nothing else has to give way.
 */
final class LatestStarts {
    private LatestStarts() {}

    /** @param plan keeps the problem; so does what is returned */
    static DayPlan of(PlanProblem problem, DayPlan plan) {
        Map<String, Task> tasks = problem.byId();
        TreeMap<String, Long> starts = new TreeMap<>(plan.starts());
        for (Lag lag : problem.lags()) {
            Task from = tasks.get(lag.from());
            if (!lag.isHard() && lag.max() != null && from != null && isFree(from)) {
                long start = plan.start(from.id());
                long liked = Math.min(plan.start(lag.to()) - lag.max(), latest(problem, from, starts));
                starts.put(from.id(), Math.max(start, liked));
            }
        }
        return new DayPlan(starts, plan.people(), plan.motors());
    }

    private static boolean isFree(Task task) {
        return !task.isFixed()
                && task.needs().isEmpty()
                && task.people().isEmpty()
                && task.motors().isEmpty();
    }

    private static long latest(PlanProblem problem, Task task, Map<String, Long> starts) {
        long latest = task.latestEnd() == null ? Long.MAX_VALUE : task.latestEnd() - task.duration();
        for (Lag lag : problem.lags()) {
            if (lag.isHard() && lag.min() != null && lag.from().equals(task.id())) {
                latest = Math.min(latest, starts.getOrDefault(lag.to(), Long.MAX_VALUE) - lag.min());
            }
            if (lag.isHard() && lag.max() != null && lag.to().equals(task.id())) {
                latest = Math.min(latest, starts.getOrDefault(lag.from(), Long.MAX_VALUE) + lag.max());
            }
        }
        return latest;
    }
}
