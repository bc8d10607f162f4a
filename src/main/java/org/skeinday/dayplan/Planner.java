package org.skeinday.dayplan;

import java.util.List;
import java.util.OptionalLong;

/**
 * Finds a plan by solving for one goal after the other, each time keeping what was reached: windows and the headline
 * proven, then preferences (holds among them), motors, few hand-overs, little change, early starts as well as the effort
 * allows. Hand-overs are few among the starts found.
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
        return new Planner(problem, goal, effort).run();
    }

    private Outcome run() {
        PlanModel model = PlanModel.of(problem, Loosened.NOTHING);
        DayPlan inForce = problem.inForce();
        if (inForce != null) {
            model.lookFirstAt(inForce);
        }
        Sum headline = model.headline(goal);
        if (!headline.isEmpty()) {
            model.sat.minimise(headline);
        }
        CpSat.Answer answer = solve(model, effort.proofWork());
        if (!answer.found()) {
            return none(answer.verdict());
        }
        boolean proven = answer.verdict() == CpSat.Verdict.OPTIMAL;
        if (!headline.isEmpty()) {
            model.sat.atMost(headline, answer.objective());
        }
        CrewModel.Staffed found = CrewModel.staff(problem, further(model, answer), effort.goalWork());
        seconds += found.seconds();
        DayPlan chosen = Replan.choose(problem, goal, found.plan());
        return new Outcome(
                proven ? Outcome.Status.OPTIMAL : Outcome.Status.FEASIBLE,
                objective(chosen),
                chosen,
                chosen.equals(inForce),
                List.of(),
                seconds);
    }

    private DayPlan further(PlanModel model, CpSat.Answer proven) {
        CpSat.Answer answer = next(model, model.preferences(), proven);
        answer = next(model, model.motorDislikes(), answer);
        if (problem.inForce() != null) {
            answer = next(model, model.change(problem.inForce()), answer);
        }
        answer = next(model, model.allStarts(), answer);
        return model.read(answer);
    }

    /** @return the better answer, or the one before when the effort ends too soon */
    private CpSat.Answer next(PlanModel model, Sum cost, CpSat.Answer before) {
        if (cost.isEmpty()) {
            return before;
        }
        model.sat.hint(before.values());
        model.sat.minimise(cost);
        CpSat.Answer answer = solve(model, effort.goalWork());
        if (!answer.found()) {
            return before;
        }
        model.sat.atMost(cost, answer.objective());
        return answer;
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
