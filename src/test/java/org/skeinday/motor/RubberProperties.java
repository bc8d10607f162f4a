package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

class RubberProperties {
    private static Length loop(SplittableRandom random) {
        return Length.ofInches(10 + 20 * random.nextDouble());
    }

    private static Mass mass(SplittableRandom random) {
        return Mass.ofGrams(0.5 + 3 * random.nextDouble());
    }

    private static UnwindingCurve unwinding(double k, Length loop, Mass mass, double factor) {
        List<TorqueReading> readings = new ArrayList<>();
        Section unit = new Section(1);
        for (int i = 0; i <= 10; i++) {
            double turns = BreakingTurns.of(k, loop, mass) * i / 10;
            Torque torque = Torque.ofNewtonMillimetres(factor * (i + 1));
            readings.add(new TorqueReading(turns, Section.of(mass, loop).scaled(torque, unit)));
        }
        return UnwindingCurve.of(readings);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void k_and_turns_and_section_scaling_go_there_and_back(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Length loop = loop(random);
        Mass mass = mass(random);
        assertEquals(43, BreakingTurns.k(BreakingTurns.of(43, loop, mass), loop, mass), 1e-9);
        Section one = Section.of(mass, loop);
        Section other = Section.of(mass(random), loop(random));
        Torque torque = Torque.ofNewtonMillimetres(6);
        assertEquals(6, one.scaled(other.scaled(torque, one), other).newtonMillimetres(), 1e-9);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12, 13, 14, 15})
    void the_fit_of_breaking_does_not_depend_on_the_unit_and_the_risk_rises_with_turns(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] turns = new double[20];
        double[] scaled = new double[20];
        boolean[] broke = new boolean[20];
        for (int i = 0; i < 20; i++) {
            turns[i] = 30 + 15 * random.nextDouble();
            scaled[i] = 57.3 * turns[i];
            broke[i] = i % 2 == 0;
        }
        WeibullFit fit = WeibullFit.of(turns, broke);
        WeibullFit other = WeibullFit.of(scaled, broke);
        assertEquals(fit.shape(), other.shape(), 1e-8 * fit.shape());
        Interval here = fit.probabilityInterval(36, 0.9);
        Interval there = other.probabilityInterval(36 * 57.3, 0.9);
        assertEquals(here.low(), there.low(), 1e-7);
        assertEquals(here.high(), there.high(), 1e-7);
        for (double n = 25; n < 50; n++) {
            assertTrue(fit.probability(n) < fit.probability(n + 1), "at " + n);
            assertTrue(fit.probabilityInterval(n, 0.9).holds(fit.probability(n)), "at " + n);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {21, 22, 23})
    void curves_of_motors_of_any_size_fall_onto_one_when_the_laws_hold(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<LaunchTorque.Unwound> batch = new ArrayList<>();
        for (int i = 1; i <= 3; i++) {
            Length loop = loop(random);
            Mass mass = mass(random);
            batch.add(new LaunchTorque.Unwound("A", unwinding(43, loop, mass, i), loop, mass));
        }
        Length loop = loop(random);
        Mass mass = mass(random);
        double turns = BreakingTurns.of(43, loop, mass);
        LaunchTorque.Forecast said = (LaunchTorque.Forecast) LaunchTorque.of(batch, 0.5 * turns, loop, mass);
        double unit = Section.of(mass, loop)
                .scaled(Torque.ofNewtonMillimetres(6), new Section(1))
                .newtonMillimetres();
        assertEquals(2 * unit, said.band().median().newtonMillimetres(), 1e-9 * unit);
        assertEquals(1.2 * unit, said.band().low().newtonMillimetres(), 1e-9 * unit);
        assertInstanceOf(LaunchTorque.NoForecast.class, LaunchTorque.of(batch, 1.1 * turns, loop, mass));
        assertInstanceOf(LaunchTorque.NoForecast.class, LaunchTorque.of(List.of(), 9, loop, mass));
    }

    @Test
    void the_interval_of_a_batchs_k_holds_the_true_mean_about_900_times_in_1000() {
        int inside = 0;
        for (int seed = 1; seed <= 1000; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<BreakTest> tests = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                Length loop = loop(random);
                Mass mass = mass(random);
                double turns = BreakingTurns.of(43 + 3 * random.nextGaussian(), loop, mass);
                tests.add(new BreakTest("A", loop, mass, turns, Torque.ofNewtonMillimetres(6)));
            }
            BatchK k = BatchK.of(tests).orElseThrow();
            inside += k.meanInterval().orElseThrow().holds(43) ? 1 : 0;
        }
        assertTrue(inside >= 870 && inside <= 930, "inside in " + inside + " of 1000 seeds");
    }

    @Test
    void curves_of_two_meters_are_not_pooled() {
        Length loop = Length.ofInches(18);
        Mass mass = Mass.ofGrams(2);
        UnwindingCurve curve = unwinding(43, loop, mass, 1);
        List<LaunchTorque.Unwound> two = List.of(
                new LaunchTorque.Unwound("A", curve, loop, mass), new LaunchTorque.Unwound("B", curve, loop, mass));
        assertThrows(IllegalArgumentException.class, () -> LaunchTorque.of(two, 900, loop, mass));
    }

    @Test
    void at_the_same_mass_a_longer_motor_takes_more_turns_and_less_torque() {
        List<NextMotor> table = NextMotor.table(
                Mass.ofGrams(2), Length.ofInches(10), 43, Torque.ofNewtonMillimetres(6), new Section(4), 6);
        for (int i = 1; i < table.size(); i++) {
            assertTrue(table.get(i).breakingTurns() > table.get(i - 1).breakingTurns());
            assertTrue(table.get(i).ceiling().compareTo(table.get(i - 1).ceiling()) < 0);
        }
    }

    @Test
    void a_cut_is_twice_the_loop_and_the_knot_and_pairs_are_closest() {
        CutList.Cut cut = CutList.of(List.of(Length.ofMillimetres(470)), CutList.DEFAULT_KNOT, 2)
                .get(0);
        assertEquals(960, cut.strip().millimetres(), 1e-9);
        assertEquals(1.92, cut.weighs().grams(), 1e-9);
        List<CutList.Pair> pairs = CutList.pairs(List.of(
                new CutList.Weighed("a", Mass.ofGrams(2.00)),
                new CutList.Weighed("b", Mass.ofGrams(1.50)),
                new CutList.Weighed("c", Mass.ofGrams(2.01)),
                new CutList.Weighed("d", Mass.ofGrams(1.70)),
                new CutList.Weighed("e", Mass.ofGrams(1.72))));
        assertEquals(
                List.of("d e", "a c"),
                pairs.stream()
                        .map(p -> p.lighter().motorId() + " " + p.heavier().motorId())
                        .toList());
    }
}
