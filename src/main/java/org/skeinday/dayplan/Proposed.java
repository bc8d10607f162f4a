package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A plan that is put before the captain.
 *
 * @param problem that the plan keeps
 * @param outcome of the last try
 * @param leftOut attempts that do not fit, the one given up first first; empty when all do
 * @param conflict why they do not, in words; empty when all fit
 * @param waysOut what else would do, each checked; empty when all fit
 */
public record Proposed(
        PlanProblem problem, Outcome outcome, List<String> leftOut, List<String> conflict, List<String> waysOut) {
    public Proposed {
        leftOut = List.copyOf(leftOut);
        conflict = List.copyOf(conflict);
        waysOut = List.copyOf(waysOut);
    }

    /**
     * The best plan of the day; where not everything fits, of what is left when the last attempts are given up, one by one.
     *
     * @param now seconds since the plan's zero
     * @param inForce null before the first plan
     * @param words for times in the conflict
     * @throws SolverMissing when the solver does not run here
     */
    public static Proposed of(Supposed day, long now, @Nullable DayPlan inForce, Effort effort, TimeWords words) {
        List<String> leftOut = new ArrayList<>();
        List<String> conflict = new ArrayList<>();
        List<String> waysOut = new ArrayList<>();
        Supposed left = day;
        while (true) {
            PlanProblem problem = left.problem(now, inForce);
            Outcome outcome = Planner.plan(problem, Goal.SLACK, effort);
            String last = lastThatMayGo(left);
            if (outcome.plan() != null || last.isEmpty()) {
                return new Proposed(problem, outcome, leftOut, conflict, waysOut);
            }
            if (leftOut.isEmpty() && outcome.status() == Outcome.Status.INFEASIBLE) {
                conflict.addAll(WhyNot.words(problem, outcome.conflict(), words));
                WaysOut.of(problem, outcome.conflict()).forEach(way -> waysOut.add(way.words(words)));
            }
            leftOut.add(last);
            left = left.withoutAttempt(last);
        }
    }

    /**
     * Whether the plan in force can no longer be kept, or leaves at least so much less in hand than this one.
     *
     * @param asItIs the day with the plan in force
     * @param least in the plan's unit
     */
    public boolean isWorthTaking(PlanProblem asItIs, long least) {
        Slip slip = Slip.of(asItIs);
        DayPlan goesOn = slip.goesOn();
        if (goesOn == null || !slip.later().isEmpty() || !leftOut.isEmpty()) {
            return true;
        }
        InHand inHand = InHand.of(asItIs, goesOn);
        long now = asItIs.tasks().stream()
                .filter(task -> !task.isFixed())
                .flatMapToLong(task -> inHand.timeInHand(task.id()).stream())
                .min()
                .orElse(Long.MAX_VALUE);
        return outcome.objective().orElse(Long.MIN_VALUE) - least >= now;
    }

    /** The same, with the plan in force in place of one that is hardly better. */
    public Proposed keepingInForce() {
        return new Proposed(
                problem,
                new Outcome(
                        outcome.status(),
                        outcome.objective(),
                        problem.inForce(),
                        true,
                        outcome.conflict(),
                        outcome.irreducible(),
                        outcome.seconds()),
                leftOut,
                conflict,
                waysOut);
    }

    /** The highest number that has not begun: the first attempts of every entry are kept longest. */
    private static String lastThatMayGo(Supposed day) {
        return day.attempts().stream()
                .filter(a -> a.begun().isEmpty())
                .max(java.util.Comparator.comparingInt(AttemptAhead::number).thenComparing(AttemptAhead::entry))
                .map(AttemptAhead::id)
                .orElse("");
    }
}
