package org.skeinday.flight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.TorqueReading;
import org.skeinday.motor.UnwindingCurve;
import org.skeinday.units.Torque;

class RunDownTest {
    private static final double RATE = 9;

    private static UnwindingCurve curve(double... turnsAndTorques) {
        List<TorqueReading> readings = new ArrayList<>();
        for (int i = 0; i < turnsAndTorques.length; i += 2) {
            readings.add(new TorqueReading(turnsAndTorques[i], Torque.ofNewtonMillimetres(turnsAndTorques[i + 1])));
        }
        return UnwindingCurve.of(readings);
    }

    /** One that takes this torque in hover. */
    private static Hover hover(double newtonMillimetres) {
        return new Hover(0.3, 2 * Math.PI * RATE * newtonMillimetres, RATE);
    }

    @Test
    void a_torque_straight_over_the_turns_has_the_time_of_its_integral() {
        // T = a·n and Q = a·d: ∫ √(d/n) dn / rate from d to N = 2(√(dN) − d) / rate; 2π∫T dn / P = N² / (2·d·rate)
        for (double d : new double[] {1, 150, 1200, 1999}) {
            RunDown down = RunDown.of(curve(0, 0, 400, 0.4, 1000, 1, 2000, 2), hover(d / 1000), 2000);
            assertEquals(d, down.turnsAtDescent(), 1e-9 * 2000);
            assertEquals(2 * (Math.sqrt(d * 2000) - d) / RATE, down.secondsToDescent(), 1e-9 * 200);
            assertEquals(2000.0 * 2000 / (2 * d * RATE), down.idealSeconds(), 1e-9 * down.idealSeconds());
            double share = 4 * d * (Math.sqrt(d * 2000) - d) / (2000.0 * 2000);
            assertEquals(share, down.shareUsed().orElseThrow(), 1e-9);
            assertTrue(down.hovers());
        }
    }

    @Test
    void a_level_torque_flies_to_the_lowest_reading() {
        RunDown down = RunDown.of(curve(100, 4, 500, 4, 1100, 4), hover(1), 1000);
        assertEquals(100, down.turnsAtDescent());
        assertEquals(900 / (2 * RATE), down.secondsToDescent(), 1e-9); // four times the torque, twice the speed
        assertEquals(4 * 900 / RATE, down.idealSeconds(), 1e-9);
    }

    @Test
    void a_curved_torque_has_the_time_of_an_independent_integration() {
        // calc: SciPy 1.17, PchipInterpolator, brentq and quad from reading to reading; in·ozf
        double[] readings = {0, 0, 150, 0.10, 500, 0.16, 1000, 0.20, 1500, 0.25, 1900, 0.33, 2150, 0.48, 2300, 0.75};
        for (int i = 1; i < readings.length; i += 2) {
            readings[i] *= 7.06155181422604;
        }
        RunDown down = RunDown.of(curve(readings), hover(0.9730600506949069), 2230);
        assertEquals(323.2127253799775, down.turnsAtDescent(), 1e-7);
        assertEquals(163.24246346905872, down.secondsToDescent(), 1e-7);
        assertEquals(412.9720606972862, down.idealSeconds(), 1e-7);
    }

    @Test
    void a_dip_below_the_torque_of_hover_ends_the_flight_though_there_is_more_torque_below_it() {
        RunDown down = RunDown.of(curve(0, 0, 500, 3, 1000, 1, 1500, 3, 2000, 5), hover(1.5), 2000);
        assertTrue(down.turnsAtDescent() > 1000 && down.turnsAtDescent() < 1500, "at " + down.turnsAtDescent());
    }

    @Test
    void a_torque_below_that_of_hover_never_holds_the_model_up() {
        RunDown down = RunDown.of(curve(0, 0, 1000, 1), hover(1.01), 1000);
        assertFalse(down.hovers());
        assertEquals(0, down.secondsToDescent());
        assertEquals(1000, down.turnsAtDescent());
        assertEquals(0, down.shareUsed().orElseThrow());
    }

    @Test
    void a_torque_that_just_is_that_of_hover_flies_no_time_and_no_turns_hold_no_energy() {
        RunDown just = RunDown.of(curve(0, 0, 1000, 1), hover(1), 1000);
        assertTrue(just.hovers());
        assertEquals(0, just.secondsToDescent(), 1e-9);
        assertTrue(RunDown.of(curve(0, 2, 9, 3), hover(1), 0).shareUsed().isEmpty());
    }

    @Test
    void turns_beyond_the_readings_are_refused() {
        UnwindingCurve curve = curve(100, 1, 1000, 2);
        assertThrows(IllegalArgumentException.class, () -> RunDown.of(curve, hover(1), 1000.1));
        assertThrows(IllegalArgumentException.class, () -> RunDown.of(curve, hover(1), 99.9));
    }

    @Test
    void no_motor_uses_more_than_its_energy_and_more_turns_never_fly_shorter() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            double[] readings = new double[16];
            for (int i = 0; i < readings.length; i += 2) {
                readings[i] = i == 0 ? 0 : readings[i - 2] + 1 + 400 * random.nextDouble();
                readings[i + 1] = i == 0 ? 0 : readings[i - 1] + random.nextDouble();
            }
            Hover hover = hover(0.2 + 3 * random.nextDouble());
            double before = 0;
            for (double share : new double[] {0.4, 0.7, 0.9, 1}) {
                RunDown down = RunDown.of(curve(readings), hover, share * readings[14]);
                double used = down.shareUsed().orElseThrow();
                assertTrue(used >= 0 && used <= 1 + 1e-12, "seed " + seed + ": share " + used);
                assertTrue(down.secondsToDescent() >= before - 1e-9, "seed " + seed);
                before = down.secondsToDescent();
            }
        }
    }
}
