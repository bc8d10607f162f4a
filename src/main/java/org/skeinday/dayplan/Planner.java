package org.skeinday.dayplan;

import java.util.List;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * Finds a plan by solving for one goal after the other, each time keeping what was reached: windows and the headline
 * proven, then preferences (holds among them), motors, few hand-overs, little change or, in a first plan, early starts as
 * well as the effort allows. Hand-overs are few among the starts found.
 */
public final class Planner {
    private final PlanProblem problem;
    private final Goal goal;
    private final Effort effort;
    private double seconds;

    private Planner(PlanProblem problem, Goal goal, Effort effort) {
        this.problem = problem;
        this.goal = goal;
        this.effort = effort;
    }

    /**
     * @param folder that exists, into which the solver's native part is unpacked: see {@link CpSat#load}. To be called
     *     once, early; without it the system's folder for temporary files is taken
     * @throws SolverMissing when it does not run here
     */
    public static void loadSolver(String folder) {
        CpSat.load(folder);
    }

    /**
     * The same problem, goal and effort give the same plan.
     *
     * @throws SolverMissing when the solver does not run here
     */
    public static Outcome plan(PlanProblem problem, Goal goal, Effort effort) {
        DayPlan inForce = problem.inForce();
        return new Planner(inForce == null ? problem : problem.withInForce(inForce.fitting(problem)), goal, effort)
                .run();
    }

    private Outcome run() {
        PlanModel model = PlanModel.of(problem, Loosened.NOTHING);
        DayPlan near = near();
        if (near != null) {
            model.lookFirstAt(near);
        }
        Sum headline = model.headline(goal);
        if (!headline.isEmpty()) {
            model.sat.minimise(headline);
        }
        CpSat.Answer answer = solve(model, effort.proofWork());
        if (!answer.found()) {
            return none(answer.verdict());
        }
        if (!headline.isEmpty()) {
            model.sat.atMost(headline, answer.objective());
        }
        DayPlan when = further(model, better(near, model.read(answer)));
        CrewModel.Staffed found = CrewModel.staff(problem, when, effort.goalWork());
        seconds += found.seconds();
        DayPlan chosen = Replan.choose(problem, goal, found.plan());
        boolean proven = answer.verdict() == CpSat.Verdict.OPTIMAL;
        return new Outcome(
                proven ? Outcome.Status.OPTIMAL : Outcome.Status.FEASIBLE,
                objective(chosen),
                chosen,
                chosen.equals(problem.inForce()),
                List.of(),
                seconds);
    }

    /** The plan in force, or what is left of it after the news; null when it cannot be kept in its order. */
    private @Nullable DayPlan near() {
        DayPlan inForce = problem.inForce();
        if (inForce == null || PlanCheck.faults(problem, inForce).isEmpty()) {
            return inForce;
        }
        return PushedBack.of(problem, inForce);
    }

    /** The near one where it is as good in the headline: then little need move. */
    private DayPlan better(@Nullable DayPlan near, DayPlan found) {
        return near != null && figures(near).headline() <= figures(found).headline() ? near : found;
    }

    private Figures figures(DayPlan plan) {
        return Figures.of(problem, goal, plan);
    }

    private DayPlan further(PlanModel model, DayPlan first) {
        DayPlan plan = next(model, model.preferences(), figures(first).preferences(), first);
        plan = next(model, model.motorDislikes(), figures(plan).motors(), plan);
        DayPlan inForce = problem.inForce();
        if (inForce == null) {
            return next(model, model.allStarts(), Long.MAX_VALUE, plan);
        }
        return plan.equals(inForce) ? plan : next(model, model.change(inForce), Long.MAX_VALUE, plan);
    }

    /**
     * @param reached by {@code before}; at 0 nothing is left to gain
     * @return the better plan, or the one before when the effort ends too soon
     */
    private DayPlan next(PlanModel model, Sum cost, long reached, DayPlan before) {
        if (cost.isEmpty()) {
            return before;
        }
        if (reached == 0) {
            model.sat.atMost(cost, 0);
            return before;
        }
        model.lookFirstAt(before);
        model.sat.minimise(cost);
        CpSat.Answer answer = solve(model, effort.goalWork());
        if (!answer.found()) {
            return before;
        }
        model.sat.atMost(cost, answer.objective());
        return model.read(answer);
    }

    private CpSat.Answer solve(PlanModel model, double work) {
        CpSat.Answer answer = model.sat.solve(work);
        seconds += answer.seconds();
        return answer;
    }

    private OptionalLong objective(DayPlan plan) {
        return goal == Goal.MAKESPAN
                ? OptionalLong.of(Figures.lastEnd(problem, plan))
                : Figures.smallestInHand(problem, plan, true);
    }

    private Outcome none(CpSat.Verdict verdict) {
        boolean proven = verdict == CpSat.Verdict.INFEASIBLE;
        Conflict conflict = proven ? Conflict.of(problem) : Conflict.NONE;
        return new Outcome(
                proven ? Outcome.Status.INFEASIBLE : Outcome.Status.UNKNOWN,
                OptionalLong.empty(),
                null,
                false,
                conflict.requirements(),
                seconds + conflict.seconds());
    }
}
