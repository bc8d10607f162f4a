package org.skeinday.dayplan;

/** Between which times some best plan lies, if there is any. */
final class Horizon {
    private Horizon() {}

    /** Before this nothing starts. */
    static long first(PlanProblem problem) {
        long first = 0;
        for (Task task : problem.tasks()) {
            first = Math.min(first, task.earliestStart());
            first = Math.min(first, task.fixedStart() == null ? 0 : task.fixedStart());
        }
        return first;
    }

    static long longest(PlanProblem problem) {
        return problem.tasks().stream().mapToLong(Task::duration).max().orElse(0);
    }

    /**
     * After this nothing need start: one task after the other from the latest earliest start, each at its longest lag.
     * A plan that is pulled to the left as far as it goes leaves no gap longer than that.
     */
    static long of(PlanProblem problem) {
        long last = 0;
        long sum = 0;
        long rest = problem.motorRest().values().stream()
                .mapToLong(Long::longValue)
                .max()
                .orElse(0);
        for (Task task : problem.tasks()) {
            last = Math.max(last, Math.max(task.earliestStart(), task.fixedStart() == null ? 0 : task.fixedStart()));
            sum += task.duration() + (task.motors().isEmpty() ? 0 : rest);
        }
        for (Lag lag : problem.lags()) {
            sum += lag.min() == null ? 0 : Math.max(0, lag.min());
            sum += lag.max() == null ? 0 : Math.max(0, -lag.max());
        }
        return last + sum;
    }
}
