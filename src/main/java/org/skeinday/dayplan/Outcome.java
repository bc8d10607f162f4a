package org.skeinday.dayplan;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * What came of planning.
 *
 * @param objective the end of the last task, or the smallest time in hand of all that have a window; empty without a
 *     plan, and without any window
 * @param bound what no plan's objective can beat; that of the plan itself when it is proven best; empty where nothing is
 *     sought
 * @param plan null unless optimal or feasible
 * @param keptInForce whether it is the plan in force, since nothing strictly better was found
 * @param conflict that leaves no plan; empty unless infeasible
 * @param irreducible false when one of the conflict may be needless, since a check of it ended without an answer
 * @param seconds the solver took, 0 or more
 */
public record Outcome(
        Status status,
        OptionalLong objective,
        OptionalLong bound,
        @Nullable DayPlan plan,
        boolean keptInForce,
        List<Requirement> conflict,
        boolean irreducible,
        double seconds) {
    /** How sure it is. */
    public enum Status {
        /** Proven best in its headline. */
        OPTIMAL,
        /** All windows kept; the search ended before the headline was proven best. */
        FEASIBLE,
        /** Proven: there is no plan. */
        INFEASIBLE,
        /** The search ended without a plan and without a proof. */
        UNKNOWN
    }

    public Outcome {
        conflict = List.copyOf(conflict);
    }

    /** How far objective and bound lie apart, as a share of the objective (of 1 where that is 0); empty without both. */
    public OptionalDouble gap() {
        if (objective.isEmpty() || bound.isEmpty()) {
            return OptionalDouble.empty();
        }
        double apart = Math.abs(objective.getAsLong() - bound.getAsLong());
        return OptionalDouble.of(apart / Math.max(1, Math.abs(objective.getAsLong())));
    }

    /** The end of the last task of the plan; empty without a plan. */
    public OptionalLong makespan(PlanProblem problem) {
        return plan == null ? OptionalLong.empty() : OptionalLong.of(Figures.lastEnd(problem, plan));
    }
}
