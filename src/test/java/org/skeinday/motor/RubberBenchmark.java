package org.skeinday.motor;

import java.util.ArrayList;
import java.util.List;
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
import org.skeinday.attempt.FlightForecast;
import org.skeinday.attempt.MotorChoice;
import org.skeinday.units.FlightTime;

/**
 * A fit of 200 winds with its interval, a curve through 200 readings with its integral, a forecast from 30 flights, and
 * the ranking of 40 motors with a forecast each.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
public class RubberBenchmark {
    private final List<BreakTrial> winds = new ArrayList<>();
    private final List<List<FlightForecast.Flown>> flown = new ArrayList<>();
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
        for (int i = 0; i < 200; i++) {
            winds.add(new BreakTrial("m" + i, 30 + 15 * random.nextDouble(), StopRule.COUNT, i % 3 == 0));
        }
        for (int motor = 0; motor < 40; motor++) {
            flown.add(flights(random));
        }
        for (int i = 0; i < x.length; i++) {
            x[i] = i + random.nextDouble() / 2;
            y[i] = random.nextDouble();
        }
    }

    private static List<FlightForecast.Flown> flights(SplittableRandom random) {
        List<FlightForecast.Flown> flights = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            FlightTime time = new FlightTime(100_000 + random.nextInt(20_000));
            flights.add(new FlightForecast.Flown(time, 1 + i % 5));
        }
        return flights;
    }

    @Benchmark
    public BreakRisk fitOf200WindsWithInterval() {
        return BreakEvidence.of(winds).at(38);
    }

    @Benchmark
    public FlightForecast forecastFrom30Flights() {
        return FlightForecast.of(flown.get(0), 3, 0.9);
    }

    @Benchmark
    public List<MotorChoice.Ranked> rankingOf40MotorsWithTheirForecasts() {
        List<MotorChoice.Candidate> motors = new ArrayList<>();
        for (int i = 0; i < flown.size(); i++) {
            FlightForecast forecast = FlightForecast.of(flown.get(i), 1 + i % 5, 0.9);
            motors.add(new MotorChoice.Candidate("m" + i, i % 7 != 0, "", "", i % 6, 5, forecast));
        }
        return MotorChoice.rank(motors);
    }

    @Benchmark
    public double curveWithIntegral() {
        return MonotoneCurve.through(x, y).integral(x[0], x[x.length - 1]);
    }
}
