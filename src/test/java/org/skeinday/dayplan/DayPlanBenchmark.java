package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * A day of several entries and attempts: the bare solve of its model, as the least; the whole plan with all goals; and
 * planning again after one winding took two minutes longer. Targets at 60 entries of 2 attempts: plan 1 s, re-plan 0.5 s.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 2)
public class DayPlanBenchmark {
    private static final long OPENS_EVERY_SECONDS = 240;

    @Param({"6", "20", "60"})
    public int entries;

    @Param({"2", "3"})
    public int attempts;

    private PlanProblem problem;
    private PlanProblem news;
    private PlanModel bare;

    @Test
    void run() throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(DayPlanBenchmark.class.getSimpleName())
                        .build())
                .run();
    }

    @Setup
    public void fill() {
        problem = day(entries, attempts);
        bare = PlanModel.of(problem, Relaxation.NOTHING);
        bare.sat.minimise(bare.costs().headline(Goal.SLACK));
        DayPlan inForce = found(wholePlan());
        Task slow = problem.byId().get("entry 0 1 wind");
        news = problem.withInForce(inForce)
                .withTasks(problem.tasks().stream()
                        .map(task -> task.id().equals(slow.id()) ? task.lasting(task.duration() + 120) : task)
                        .toList())
                .withLags(problem.lags().stream()
                        .map(lag -> lag.from().equals(slow.id()) ? later(lag) : lag)
                        .toList());
        found(planAgain());
    }

    private static Lag later(Lag lag) {
        return lag.bounded(
                lag.min() == null ? null : (Long) (lag.min() + 120),
                lag.max() == null ? null : (Long) (lag.max() + 120));
    }

    /** A benchmark of a plan that is not there, or not proven, says nothing. */
    private static DayPlan found(Outcome outcome) {
        if (outcome.status() != Outcome.Status.OPTIMAL || outcome.plan() == null) {
            throw new IllegalStateException("The plan must be proven, but is " + outcome.status());
        }
        return outcome.plan();
    }

    static PlanProblem day(int entries, int attempts) {
        List<AttemptAhead> ahead = new ArrayList<>();
        for (int e = 0; e < entries; e++) {
            long opens = 600 + e * OPENS_EVERY_SECONDS;
            long closes = opens + attempts * 900L + 300 + e * 37 % 5 * 60;
            Map<String, Integer> motors = new TreeMap<>();
            for (int m = 0; m < 4; m++) {
                motors.put("m" + e + "-" + m, m);
            }
            for (int n = 1; n <= attempts; n++) {
                ahead.add(AttemptAhead.of("entry " + e, n, opens, closes, motors));
            }
        }
        EventSetting setting = EventSetting.smallest().with(5, 3, 6, 2).withCrew(crew());
        return EventChains.of(ahead, Map.of(), setting, 0, null);
    }

    private static List<Person> crew() {
        List<Person> crew = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            crew.add(Person.cleared(
                    "winder " + i,
                    i % 2 == 0 ? Set.of(EventSetting.WINDS) : Set.of(EventSetting.WINDS, EventSetting.LOADS)));
        }
        for (int i = 0; i < 4; i++) {
            crew.add(Person.cleared("loader " + i, Set.of(EventSetting.LOADS)));
        }
        return crew;
    }

    @Benchmark
    public Object bareSolve() {
        return bare.sat.solve(Effort.live().proofWork());
    }

    @Benchmark
    public Outcome wholePlan() {
        return Planner.plan(problem, Goal.SLACK, Effort.live());
    }

    @Benchmark
    public Outcome planAgain() {
        return Planner.plan(news, Goal.SLACK, Effort.live());
    }
}
