package org.skeinday.dayplan;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.CumulativeConstraint;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearArgument;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.Literal;
import com.google.ortools.sat.SatParameters;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The one class that speaks to the CP-SAT solver: a model of whole-number variables, named by their number. One worker,
 * one seed, and limits in counted work: the same model and the same calls give the same answer, unless a clock ends one.
 */
final class CpSat {
    private static final int SEED = 19;
    private static final int WORKERS = 8;
    private static final String UNPACK_TO = "java.io.tmpdir";
    private static boolean loaded;

    enum Verdict {
        OPTIMAL,
        FEASIBLE,
        INFEASIBLE,
        UNKNOWN
    }

    /**
     * @param bound that no answer's objective is below
     * @param values of all variables; empty unless optimal or feasible
     * @param work that the solver counted
     */
    record Answer(Verdict verdict, long objective, long bound, List<Long> values, double seconds, double work) {
        boolean found() {
            return verdict == Verdict.OPTIMAL || verdict == Verdict.FEASIBLE;
        }
    }

    private final CpModel model;
    private final List<IntVar> variables = new ArrayList<>();
    private final List<IntervalVar> intervals = new ArrayList<>();

    private CpSat() {
        model = new CpModel();
    }

    /**
     * Loads the native part; further calls do nothing.
     *
     * @param folder that exists, into which it is unpacked. Only the first call counts, and only while nothing else in
     *     this program has made a temporary file: the JDK looks at its folder once
     * @throws SolverMissing when it cannot be unpacked or does not run here
     */
    static synchronized void load(String folder) {
        if (loaded) {
            return;
        }
        String before = System.getProperty(UNPACK_TO);
        try {
            System.setProperty(UNPACK_TO, folder);
            Loader.loadNativeLibraries();
            probe();
            loaded = true;
        } catch (RuntimeException | LinkageError e) {
            throw new SolverMissing(String.valueOf(e.getMessage()), e);
        } finally {
            System.setProperty(UNPACK_TO, before);
        }
    }

    /** The loader is silent when unpacking fails: only a model tells. */
    private static void probe() {
        CpSat one = new CpSat();
        one.variable(1, 2);
        Answer answer = one.solve(1);
        if (!answer.found()) {
            throw new IllegalStateException("its first answer was " + answer.verdict());
        }
    }

    static CpSat model() {
        load(System.getProperty(UNPACK_TO));
        return new CpSat();
    }

    int variable(long low, long high) {
        variables.add(model.newIntVar(low, high, ""));
        return variables.size() - 1;
    }

    int choice() {
        variables.add(model.newBoolVar(""));
        return variables.size() - 1;
    }

    /** @return the number of the interval, which is not one of the variables */
    int interval(int start, long size) {
        intervals.add(model.newFixedSizeIntervalVar(variables.get(start), size, ""));
        return intervals.size() - 1;
    }

    /** @param present the choice that it is there at all */
    int interval(int start, long size, int present) {
        intervals.add(model.newOptionalFixedSizeIntervalVar(variables.get(start), size, literal(present), ""));
        return intervals.size() - 1;
    }

    /** At each moment the demands of the intervals that run come to no more than the capacity and the extra. */
    void capacity(List<Integer> which, List<Long> demands, long capacity, List<Integer> extra) {
        LinearArgument limit = extra.isEmpty()
                ? LinearExpr.constant(capacity)
                : LinearExpr.affine(variables.get(extra.get(0)), 1, capacity);
        CumulativeConstraint constraint = model.addCumulative(limit);
        for (int i = 0; i < which.size(); i++) {
            constraint.addDemand(intervals.get(which.get(i)), demands.get(i));
        }
    }

    void oneAtATime(List<Integer> which) {
        model.addNoOverlap(which.stream().map(intervals::get).toArray(IntervalVar[]::new));
    }

    /** No choice at all cannot be kept. */
    void exactlyOne(List<Integer> choices) {
        model.addExactlyOne(choices.stream().map(this::literal).toArray(Literal[]::new));
    }

    void atLeast(Sum sum, long bound) {
        model.addGreaterOrEqual(expression(sum), bound);
    }

    void atMost(Sum sum, long bound) {
        model.addLessOrEqual(expression(sum), bound);
    }

    void minimise(Sum sum) {
        model.minimize(expression(sum));
    }

    void forgetHints() {
        model.clearHints();
    }

    /** Where to look first. */
    void hint(int variable, long value) {
        model.addHint(variables.get(variable), value);
    }

    /** @param work the most, counted by the solver */
    Answer solve(double work) {
        return answer(solver(work), null);
    }

    /**
     * The same, ended by the clock too where that has a limit.
     *
     * @param seconds the most
     * @param tells whether this is the answer that the clock is told of
     */
    Answer solve(double work, double seconds, SearchClock clock, boolean tells) {
        CpSolver solver = solver(work);
        if (clock.isLimited()) {
            solver.getParameters().setMaxTimeInSeconds(seconds);
        }
        if (clock.isLimited() && tells) {
            searchBroadly(solver.getParameters());
        }
        if (!tells || !clock.isHeard() || !model.hasObjective()) {
            return answer(solver, null);
        }
        // Not by the solver's callback for bounds: its native part keeps no hold of it, and dies once memory was
        // cleared.
        return answer(solver, new CpSolverSolutionCallback() {
            @Override
            public void onSolutionCallback() {
                clock.found(Math.round(objectiveValue()), up(bestObjectiveBound()));
            }
        });
    }

    private static CpSolver solver(double work) {
        CpSolver solver = new CpSolver();
        solver.getParameters()
                .setNumWorkers(1)
                .setRandomSeed(SEED)
                // Rounds that find next to nothing in a day of chains took two thirds of the time.
                .setSymmetryLevel(0)
                .setCpModelProbingLevel(0)
                .setMaxPresolveIterations(1)
                .setMaxDeterministicTime(work)
                .setLogSearchProgress(false);
        return solver;
    }

    /**
     * For problems that one worker does not prove in the time that people wait: eight look in ways of their own and share
     * what they learn, which pays on two processors too (the job shop ft10 on two busy ones: proven within 20 s, where two
     * workers as above were 15 % from it after 25 s).
     */
    private static void searchBroadly(SatParameters.Builder parameters) {
        parameters
                .clearSymmetryLevel()
                .clearCpModelProbingLevel()
                .clearMaxPresolveIterations()
                .setNumWorkers(Math.max(WORKERS, Runtime.getRuntime().availableProcessors()))
                .setUseOverloadCheckerInCumulative(true)
                .setUseTimetableEdgeFindingInCumulative(true)
                .setUseHardPrecedencesInCumulative(true)
                .setUseDisjunctiveConstraintInCumulative(true)
                .setUseStrongPropagationInDisjunctive(true)
                .setUseDynamicPrecedenceInDisjunctive(true);
    }

    private Answer answer(CpSolver solver, @Nullable CpSolverSolutionCallback told) {
        CpSolverStatus status = solver.solve(model, told);
        Verdict verdict = verdict(status);
        boolean found = verdict == Verdict.OPTIMAL || verdict == Verdict.FEASIBLE;
        List<Long> values = found ? variables.stream().map(solver::value).toList() : List.of();
        long objective = found && model.hasObjective() ? Math.round(solver.objectiveValue()) : 0;
        return new Answer(
                verdict,
                objective,
                verdict == Verdict.OPTIMAL || !model.hasObjective() ? objective : up(solver.bestObjectiveBound()),
                values,
                solver.wallTime(),
                solver.response().getDeterministicTime());
    }

    /** Objectives are whole numbers: none is between. */
    private static long up(double bound) {
        return Math.abs(bound) < 1e15 ? (long) Math.ceil(bound - 1e-6) : Long.MIN_VALUE;
    }

    private Verdict verdict(CpSolverStatus status) {
        return switch (status) {
            case OPTIMAL -> Verdict.OPTIMAL;
            case FEASIBLE -> Verdict.FEASIBLE;
            case INFEASIBLE -> Verdict.INFEASIBLE;
            case UNKNOWN -> Verdict.UNKNOWN;
            default -> throw new IllegalStateException("The model must be valid, but: " + model.validate());
        };
    }

    private Literal literal(int choice) {
        return (BoolVar) variables.get(choice);
    }

    private LinearExpr expression(Sum sum) {
        return LinearExpr.weightedSum(
                sum.variables.stream().map(variables::get).toArray(LinearArgument[]::new),
                sum.factors.stream().mapToLong(Long::longValue).toArray());
    }
}
