package org.skeinday.dayplan;

import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What has become of the plan in force by now.
 *
 * @param goesOn the plan in its own order with what is late pushed back; null when in this order it cannot be kept, or when
 *     something is to be done that it does not know
 * @param later by how much tasks that have not begun start later than planned, in the plan's unit, those of 0 left out; of attempts alone, since a repair that runs ends when it ends
 */
public record Slip(@Nullable DayPlan goesOn, SortedMap<String, Long> later) {

    /** @throws IllegalArgumentException when the problem has no plan in force */
    public static Slip of(PlanProblem problem) {
        DayPlan inForce = problem.inForce();
        if (inForce == null) {
            throw new IllegalArgumentException("Only a plan in force can slip, but there is none");
        }
        DayPlan fitting = inForce.fitting(problem);
        DayPlan goesOn = PushedBack.of(problem, fitting);
        SortedMap<String, Long> later = new TreeMap<>();
        if (goesOn != null) {
            for (Task task : problem.tasks()) {
                Long planned = fitting.starts().get(task.id());
                long by = planned == null ? 0 : goesOn.start(task.id()) - planned;
                if (!task.isFixed() && by > 0 && !PushedBack.isBeside(problem, task)) {
                    later.put(task.id(), by);
                }
            }
        }
        return new Slip(goesOn, later);
    }
}
