package org.skeinday.motor;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** The Weibull fit with its interval for 40 motors, and a curve through 200 readings with its integral. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
public class RubberBenchmark {
    private final double[] turns = new double[40];
    private final boolean[] broke = new boolean[40];
    private final double[] x = new double[200];
    private final double[] y = new double[200];

    @Test
    void run() throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(RubberBenchmark.class.getSimpleName())
                        .build())
                .run();
    }

    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < turns.length; i++) {
            turns[i] = 30 + 15 * random.nextDouble();
            broke[i] = i % 3 == 0;
        }
        for (int i = 0; i < x.length; i++) {
            x[i] = i + random.nextDouble() / 2;
            y[i] = random.nextDouble();
        }
    }

    @Benchmark
    public Interval weibullFitWithInterval() {
        return WeibullFit.of(turns, broke).probabilityInterval(38, 0.9);
    }

    @Benchmark
    public double curveWithIntegral() {
        return MonotoneCurve.through(x, y).integral();
    }
}
