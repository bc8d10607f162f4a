package org.skeinday.dayplan;

/** Which plan people work by after planning again. */
public final class Replan {
    private Replan() {}

    /**
     * The plan in force stays unless it no longer keeps the problem or the one found is strictly better in the goals:
     * people are not sent elsewhere for nothing.
     */
    public static DayPlan choose(PlanProblem problem, Goal goal, DayPlan found) {
        DayPlan inForce = problem.inForce();
        if (inForce == null || !PlanCheck.faults(problem, inForce).isEmpty()) {
            return found;
        }
        return Figures.of(problem, goal, found).betterThan(Figures.of(problem, goal, inForce)) ? found : inForce;
    }
}
