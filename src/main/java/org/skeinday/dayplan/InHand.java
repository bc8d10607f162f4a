package org.skeinday.dayplan;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * The latest safe start of each task: started then, and with what follows pushed back in the plan's own order, every
 * window is still kept. The time in hand is what lies between the planned start and that.
 */
public final class InHand {
    private final DayPlan plan;
    private final Map<String, Long> latest;

    private InHand(DayPlan plan, Map<String, Long> latest) {
        this.plan = plan;
        this.latest = latest;
    }

    /** @param plan keeps the problem: {@link PlanCheck} finds no fault */
    public static InHand of(PlanProblem problem, DayPlan plan) {
        Map<String, Task> tasks = problem.byId();
        Map<String, Long> latest = new TreeMap<>();
        for (Task task : problem.tasks()) {
            if (task.latestEnd() != null) {
                latest.put(task.id(), task.latestEnd() - task.duration());
            }
        }
        List<Arc> arcs = Arcs.of(problem, plan);
        // Longest paths back from the windows: a pass per link of the longest chain at most, as there is no circle.
        boolean moved = true;
        for (int pass = 0; moved && pass <= tasks.size(); pass++) {
            moved = false;
            for (Arc arc : arcs) {
                moved |= pullBack(arc, tasks, latest);
            }
        }
        return new InHand(plan, latest);
    }

    private static boolean pullBack(Arc arc, Map<String, Task> tasks, Map<String, Long> latest) {
        Task to = tasks.get(arc.to());
        Long bound = to != null && to.fixedStart() != null ? to.fixedStart() : latest.get(arc.to());
        if (bound == null) {
            return false;
        }
        Long known = latest.get(arc.from());
        if (known != null && known <= bound - arc.length()) {
            return false;
        }
        latest.put(arc.from(), bound - arc.length());
        return true;
    }

    /** Empty when no window follows. */
    public OptionalLong latestSafeStart(String task) {
        Long start = latest.get(task);
        return start == null ? OptionalLong.empty() : OptionalLong.of(start);
    }

    /** Zero or more; empty when no window follows. */
    public OptionalLong timeInHand(String task) {
        Long start = latest.get(task);
        return start == null ? OptionalLong.empty() : OptionalLong.of(start - plan.start(task));
    }
}
