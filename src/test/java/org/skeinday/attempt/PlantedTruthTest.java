package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.skeinday.units.FlightTime;

/** Simulated flights with a truth put in: it is found where it is and not found where it is not. */
class PlantedTruthTest {
    /** Seconds for each N·mm of launch torque. */
    private static final double SLOPE = 9;

    private static final int SEEDS = 100;

    /** So many that an interval which should hold 900 of them leaves 870 to 930 less than once in 500 tries. */
    private static final int MANY_SEEDS = 1000;

    private record Day(double[] torques, double[] seconds) {
        List<FlightTrend.Point> points() {
            List<FlightTrend.Point> points = new ArrayList<>();
            for (int i = 0; i < torques.length; i++) {
                points.add(new FlightTrend.Point(torques[i], new FlightTime(Math.round(seconds[i] * 1000))));
            }
            return points;
        }
    }

    /** Thirty flights at launch torques of 3 to 6 N·mm, scattered by 5 s. */
    private static Day day(long seed, double slope) {
        SplittableRandom random = new SplittableRandom(seed);
        Day day = new Day(new double[30], new double[30]);
        for (int i = 0; i < 30; i++) {
            day.torques[i] = 3 + 3 * random.nextDouble();
            day.seconds[i] = 70 + slope * day.torques[i] + 5 * random.nextGaussian();
        }
        return day;
    }

    @Test
    void a_slope_put_into_flights_is_recovered_and_its_90_percent_interval_holds_it_about_900_times_in_1000() {
        int inside = 0;
        double mean = 0;
        for (int seed = 1; seed <= MANY_SEEDS; seed++) {
            FlightTrend.Shown said = assertInstanceOf(
                    FlightTrend.Shown.class, FlightTrend.of(day(seed, SLOPE).points(), 0.90), "seed " + seed);
            inside += said.interval().holds(SLOPE) ? 1 : 0;
            mean += said.secondsPerUnit() / MANY_SEEDS;
        }
        assertTrue(inside >= 870 && inside <= 930, "inside in " + inside + " of 1000 seeds");
        assertEquals(SLOPE, mean, 0.2);
    }

    @Test
    void shuffled_flights_give_no_evidence_yet() {
        int none = 0;
        for (int seed = 1; seed <= SEEDS; seed++) {
            Day day = day(seed, SLOPE);
            List<Double> seconds = new ArrayList<>();
            for (double s : day.seconds()) {
                seconds.add(s);
            }
            Collections.shuffle(seconds, new Random(seed));
            Day shuffled =
                    new Day(day.torques(), seconds.stream().mapToDouble(s -> s).toArray());
            none += FlightTrend.of(shuffled.points(), 0.90) instanceof FlightTrend.NoEvidence ? 1 : 0;
        }
        assertTrue(none >= 95, "no evidence in " + none + " of 100 seeds");
    }

    @Test
    void a_forecast_holds_the_next_flight_about_900_times_in_1000() {
        int inside = 0;
        for (int seed = 1; seed <= MANY_SEEDS; seed++) {
            SplittableRandom random = new SplittableRandom(1000 + seed);
            List<FlightForecast.Flown> flown = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                flown.add(new FlightForecast.Flown(time(random), 2));
            }
            FlightForecast.Expected said =
                    assertInstanceOf(FlightForecast.Expected.class, FlightForecast.of(flown, 2, 0.90));
            inside += said.interval().holds(time(random).millis() / 1000.0) ? 1 : 0;
        }
        assertTrue(inside >= 870 && inside <= 930, "the next flight inside in " + inside + " of 1000 seeds");
    }

    private static FlightTime time(SplittableRandom random) {
        return new FlightTime(Math.round(1000 * (110 + 8 * random.nextGaussian())));
    }

    @Test
    void two_flights_or_one_torque_are_no_evidence() {
        List<FlightTrend.Point> flights = List.of(point(3, 100), point(4, 110));
        assertEquals(
                new FlightTrend.NoEvidence("no evidence yet: it needs 3 valid flights, so far 2"),
                FlightTrend.of(flights, 0.90));
        List<FlightTrend.Point> alike = List.of(point(3, 100), point(3, 110), point(3, 120));
        assertEquals(
                new FlightTrend.NoEvidence("no evidence yet: it was the same on all 3 valid flights"),
                FlightTrend.of(alike, 0.90));
    }

    private static FlightTrend.Point point(double torque, int seconds) {
        return new FlightTrend.Point(torque, new FlightTime(seconds * 1000L));
    }
}
