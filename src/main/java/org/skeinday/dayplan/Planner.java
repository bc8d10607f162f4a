package org.skeinday.dayplan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;

/**
 * Finds a plan by solving for one goal after the other, each time keeping what was reached: windows and the headline
 * proven, then preferences (holds among them), motors, few hand-overs, little change or, in a first plan, early starts as
 * well as the effort allows. What {@link Bounds} show to be reached is not searched for again.
 */
public final class Planner {
    private static final double UNCOUNTED = 1e9;

    private final PlanProblem problem;
    private final Goal goal;
    private final Effort effort;
    private final Figures least;
    private final SearchClock clock;
    private double seconds;

    private Planner(PlanProblem problem, Goal goal, Effort effort, SearchClock clock) {
        this.problem = problem;
        this.goal = goal;
        this.effort = effort;
        this.clock = clock;
        this.least = Bounds.of(problem, goal);
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
        return plan(problem, goal, effort, SearchClock.unheard());
    }

    /**
     * The same, with a clock that is told how far it has come and, where it has a limit, ends the search for the headline in
     * place of counted work: the best plan until then, and what no plan can beat.
     */
    public static Outcome plan(PlanProblem problem, Goal goal, Effort effort, SearchClock clock) {
        DayPlan inForce = problem.inForce();
        PlanProblem fitting = inForce == null ? problem : problem.withInForce(inForce.fitting(problem));
        return new Planner(fitting, goal, effort, clock).run();
    }

    /** The same, but of a conflict only in which part of the problem it lies: quicker, for one try of many. */
    static Outcome planBriefly(PlanProblem problem, Goal goal, Effort effort) {
        Outcome outcome = plan(problem, goal, effort);
        if (outcome.plan() != null) {
            return outcome;
        }
        Overfull.Found found = Overfull.of(problem, effort.proofWork() / 4);
        PlanProblem part = found.part();
        return new Outcome(
                part == null ? outcome.status() : Outcome.Status.INFEASIBLE,
                OptionalLong.empty(),
                OptionalLong.empty(),
                null,
                false,
                part == null ? List.of() : Conflict.all(part),
                false,
                outcome.seconds() + found.seconds());
    }

    private Outcome run() {
        DayPlan near = near();
        if (near != null && figures(near).equals(least)) {
            return outcome(near, least.headline());
        }
        if (near == null && Overfull.isCounted(problem)) {
            return none(CpSat.Verdict.INFEASIBLE, least.headline()); // no search is needed for that
        }
        PlanModel model = PlanModel.of(problem, Relaxation.NOTHING);
        Sum headline = model.costs().headline(goal);
        if (near != null && figures(near).headline() == least.headline()) {
            model.keep(headline, least.headline());
            return outcome(further(model, near), least.headline());
        }
        CpSat.Answer answer = headline(model, headline, near);
        if (!answer.found()) {
            return none(answer.verdict(), answer.bound());
        }
        DayPlan first = better(near, model.read(answer));
        model.keep(headline, figures(first).headline());
        return outcome(
                further(model, first),
                answer.verdict() == CpSat.Verdict.OPTIMAL ? figures(first).headline() : answer.bound());
    }

    private CpSat.Answer headline(PlanModel model, Sum headline, @Nullable DayPlan near) {
        if (near != null) {
            model.lookFirstAt(near);
        }
        if (!headline.isEmpty()) {
            model.sat.minimise(headline);
        }
        clock.noneBelow(least.headline());
        double work = clock.isLimited() ? UNCOUNTED : effort.proofWork();
        return timed(model.sat.solve(work, clock.leftForHeadline(), clock, true));
    }

    /** @param noneBelow that no plan's headline is below; with that of the plan, it is proven best */
    private Outcome outcome(DayPlan found, long noneBelow) {
        DayPlan chosen = Replan.choose(problem, goal, found);
        boolean proven = figures(chosen).headline() <= noneBelow;
        return new Outcome(
                proven ? Outcome.Status.OPTIMAL : Outcome.Status.FEASIBLE,
                objective(chosen),
                proven ? objective(chosen) : bound(noneBelow),
                chosen,
                chosen.equals(problem.inForce()),
                List.of(),
                true,
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

    /** Hand-overs can be few at the starts so far, or at those that change least: the better of the two. */
    private DayPlan further(PlanModel model, DayPlan first) {
        DayPlan plan = next(model, model.costs().preferences(), Figures::preferences, eased(first));
        plan = next(model, model.costs().motorDislikes(), Figures::motors, plan);
        DayPlan crewed = crew(plan);
        DayPlan moved = next(model, model.costs().change(), Figures::change, plan);
        DayPlan other = moved.sameButPeople(plan) ? crewed : crew(moved);
        return figures(other).betterThan(figures(crewed)) ? other : crewed;
    }

    private DayPlan eased(DayPlan plan) {
        DayPlan eased = LatestStarts.of(problem, plan);
        return figures(eased).betterThan(figures(plan)) ? eased : plan;
    }

    private DayPlan crew(DayPlan plan) {
        Crewing crewing = new Crewing(problem, goal, effort.goalWork());
        DayPlan crewed = crewing.crew(plan);
        seconds += crewing.seconds();
        return crewed;
    }

    /** @return the better plan, or the one before when the effort ends too soon or nothing is left to gain */
    private DayPlan next(PlanModel model, Sum cost, ToLongFunction<Figures> figure, DayPlan before) {
        DayPlan plan = before;
        long reached = figure.applyAsLong(figures(before));
        if (!cost.isEmpty() && !clock.isOver() && reached > figure.applyAsLong(least)) {
            model.lookFirstAt(before);
            model.sat.minimise(cost);
            CpSat.Answer answer = timed(model.sat.solve(effort.goalWork(), clock.left(), clock, false));
            if (answer.found() && answer.objective() < reached) {
                plan = model.read(answer);
                reached = answer.objective();
            }
        }
        model.keep(cost, reached);
        return plan;
    }

    private CpSat.Answer timed(CpSat.Answer answer) {
        seconds += answer.seconds();
        return answer;
    }

    private OptionalLong objective(DayPlan plan) {
        return goal == Goal.MAKESPAN
                ? OptionalLong.of(Figures.lastEnd(problem, plan))
                : Figures.smallestInHand(problem, plan, true);
    }

    /** Of the objective; of what the solver says and what windows and lags alone say the nearer one. */
    private OptionalLong bound(long noneBelow) {
        long nearer = Math.max(noneBelow, least.headline());
        return objectiveIsSought() ? OptionalLong.of(goal == Goal.MAKESPAN ? nearer : -nearer) : OptionalLong.empty();
    }

    private boolean objectiveIsSought() {
        return goal == Goal.MAKESPAN || problem.tasks().stream().anyMatch(t -> t.latestEnd() != null && !t.isFixed());
    }

    private Outcome none(CpSat.Verdict verdict, long noneBelow) {
        Effort left = clock.within(effort);
        Optional<Conflict> conflict = verdict == CpSat.Verdict.INFEASIBLE
                ? Optional.of(Conflict.of(problem, left))
                : Conflict.ofPart(problem, left);
        return new Outcome(
                conflict.isPresent() ? Outcome.Status.INFEASIBLE : Outcome.Status.UNKNOWN,
                OptionalLong.empty(),
                conflict.isPresent() ? OptionalLong.empty() : bound(noneBelow),
                null,
                false,
                conflict.map(Conflict::requirements).orElse(List.of()),
                conflict.map(Conflict::irreducible).orElse(true),
                seconds + conflict.map(Conflict::seconds).orElse(0.0));
    }
}
