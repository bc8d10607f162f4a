package org.skeinday.dayplan;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Between which starts windows and hard lags leave each task, everything else aside: longest paths, in as many passes
 * as the longest chain has links.
 *
 * @param earliest by task
 * @param latest by task; without an end where no window follows
 */
record StartBounds(Map<String, Long> earliest, Map<String, Long> latest) {
    static StartBounds of(PlanProblem problem) {
        Map<String, Long> earliest = new HashMap<>();
        Map<String, Long> latest = new HashMap<>();
        for (Task task : problem.tasks()) {
            Long fixed = task.fixedStart();
            earliest.put(task.id(), fixed != null ? fixed : task.earliestStart());
            Long end = task.latestEnd();
            if (fixed != null) {
                latest.put(task.id(), fixed);
            } else if (end != null) {
                latest.put(task.id(), end - task.duration());
            }
        }
        // More passes than tasks mean a circle of lags that nothing can keep: where it stands is bound enough.
        boolean moved = true;
        for (int pass = 0; moved && pass <= problem.tasks().size(); pass++) {
            moved = false;
            for (Lag lag : problem.lags()) {
                moved |= lag.isHard() && tighten(lag, earliest, latest);
            }
        }
        return new StartBounds(earliest, latest);
    }

    /** Empty where no window follows. */
    OptionalLong latest(String task) {
        Long start = latest.get(task);
        return start == null ? OptionalLong.empty() : OptionalLong.of(start);
    }

    /**
     * @return a task that cannot start in time, whatever the others hold: one with a window of its own, where there is
     *     one; null when all can
     */
    @Nullable
    Task tooLate(PlanProblem problem) {
        Task found = null;
        for (Task task : problem.tasks()) {
            Long last = latest.get(task.id());
            boolean late = last != null && Objects.requireNonNull(earliest.get(task.id())) > last;
            if (late && (found == null || task.latestEnd() != null)) {
                found = task;
            }
        }
        return found;
    }

    /** @return all tasks that cannot start in time and have a window of their own */
    Set<String> late(PlanProblem problem) {
        Set<String> late = new TreeSet<>();
        for (Task task : problem.tasks()) {
            Long last = latest.get(task.id());
            if (task.latestEnd() != null && last != null && Objects.requireNonNull(earliest.get(task.id())) > last) {
                late.add(task.id());
            }
        }
        return late;
    }

    private static boolean tighten(Lag lag, Map<String, Long> earliest, Map<String, Long> latest) {
        boolean moved = false;
        if (lag.min() != null) {
            moved |= apart(lag.from(), lag.to(), lag.min(), earliest, latest);
        }
        if (lag.max() != null) {
            moved |= apart(lag.to(), lag.from(), -lag.max(), earliest, latest);
        }
        return moved;
    }

    private static boolean apart(
            String from, String to, long least, Map<String, Long> earliest, Map<String, Long> latest) {
        boolean moved = false;
        long soonest = Objects.requireNonNull(earliest.get(from)) + least;
        if (soonest > Objects.requireNonNull(earliest.get(to))) {
            earliest.put(to, soonest);
            moved = true;
        }
        Long bound = latest.get(to);
        Long known = latest.get(from);
        if (bound != null && (known == null || known > bound - least)) {
            latest.put(from, bound - least);
            moved = true;
        }
        return moved;
    }
}
