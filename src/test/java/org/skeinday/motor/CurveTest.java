package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

class CurveTest {
    private static List<TorqueReading> readings(double... turnsAndTorques) {
        List<TorqueReading> list = new ArrayList<>();
        for (int i = 0; i < turnsAndTorques.length; i += 2) {
            list.add(new TorqueReading(turnsAndTorques[i], Torque.ofNewtonMillimetres(turnsAndTorques[i + 1])));
        }
        return list;
    }

    @Test
    void torque_work_of_a_straight_rise_is_two_pi_times_the_triangle() {
        double work = WindingCurve.of(readings(0, 0, 1000, 5)).torqueWorkMillijoules();
        assertEquals(2 * Math.PI * 2500, work, 1e-9);
    }

    @Test
    void specific_energy_is_the_energy_of_unwinding_per_kilogram() {
        UnwindingCurve curve = UnwindingCurve.of(readings(2000, 4, 1000, 2, 0, 0));
        assertEquals(2 * Math.PI * 4000, curve.energyMillijoules(), 1e-8);
        assertEquals(2 * Math.PI * 2000, curve.specificEnergyJoulesPerKilogram(Mass.ofGrams(2)), 1e-8);
    }

    @Test
    void energy_between_two_turns_adds_up_to_the_whole() {
        UnwindingCurve curve = UnwindingCurve.of(readings(0, 0, 500, 1, 1500, 1.4, 2000, 5));
        double parts = curve.energyMillijoules(2000, 1730) + curve.energyMillijoules(0, 1730);
        assertEquals(curve.energyMillijoules(), parts, 1e-9);
    }

    @Test
    void readings_at_the_same_turns_count_as_their_mean() {
        TorqueCurve curve = TorqueCurve.of(readings(0, 0, 100, 2, 100, 4, 200, 6));
        assertEquals(3, curve.at(100).newtonMillimetres(), 1e-12);
    }

    @Test
    void nothing_is_said_outside_the_readings() {
        TorqueCurve curve = TorqueCurve.of(readings(100, 1, 200, 2));
        assertThrows(IllegalArgumentException.class, () -> curve.at(201));
        assertThrows(IllegalArgumentException.class, () -> TorqueCurve.of(readings(100, 1, 100, 2)));
    }

    @Test
    void a_curve_refuses_points_that_go_back() {
        double[] back = {0, 2, 1};
        assertThrows(IllegalArgumentException.class, () -> MonotoneCurve.through(back, new double[3]));
    }

    @Test
    void a_curve_stays_between_its_neighbouring_points_and_order_of_readings_does_not_matter() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            List<TorqueReading> list = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                list.add(new TorqueReading(
                        100 * i + random.nextInt(90), Torque.ofNewtonMillimetres(random.nextDouble() * 9)));
            }
            TorqueCurve curve = TorqueCurve.of(list);
            staysBetween(seed, list, curve);
            Collections.shuffle(list, random);
            assertEquals(curve.at(400), TorqueCurve.of(list).at(400), "seed " + seed);
        }
    }

    private static void staysBetween(long seed, List<TorqueReading> list, TorqueCurve curve) {
        for (int i = 1; i < list.size(); i++) {
            TorqueReading a = list.get(i - 1);
            TorqueReading b = list.get(i);
            for (double s = 0; s <= 1; s += 0.125) {
                double at = curve.at(a.motorTurns() + s * (b.motorTurns() - a.motorTurns()))
                        .newtonMillimetres();
                double low = Math.min(a.torque().newtonMillimetres(), b.torque().newtonMillimetres());
                double high =
                        Math.max(a.torque().newtonMillimetres(), b.torque().newtonMillimetres());
                assertTrue(at >= low - 1e-9 && at <= high + 1e-9, "seed " + seed + " segment " + i);
            }
        }
    }

    @Test
    void the_published_band_of_good_rubber_converts_to_joules_per_kilogram() {
        // Mailing-list archive, 1999 and 2007: 1000 ft·lbf/lb = 2989 J/kg; good rubber 3950 to 4300 ft·lbf/lb
        assertEquals(1000, UnwindingCurve.footPoundsPerPound(2989), 0.05);
        assertEquals(3950, UnwindingCurve.footPoundsPerPound(11807), 0.5);
        assertEquals(4300, UnwindingCurve.footPoundsPerPound(12853), 0.5);
    }

    @Test
    void a_sample_has_the_usual_quantiles_and_intervals() {
        Sample sample = Sample.of(4, 1, 3, 2);
        assertEquals(2.5, sample.median(), 1e-12);
        assertEquals(1.3, sample.quantile(0.1), 1e-12); // type 7: 1 + 0.1·3
        // t(0.95, 3) = 2.353363; s = 1.290994
        assertEquals(
                2.5 - 2.353363 * 1.290994 * Math.sqrt(1.25),
                sample.predictionInterval(0.9).low(),
                1e-5);
        assertEquals(2.5 + 2.353363 * 1.290994 / 2, sample.meanInterval(0.9).high(), 1e-5);
    }
}
