package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

/** A step of reading as a standard deviation (JCGM 100:2008, 4.3.7 and F.2.2.1: step/√12, 0.29 of the step). */
class ResolutionTest {
    private static final double DIVISION = 0.353;

    private static Hold.Reading at(double seconds, double nmm, double step) {
        return new Hold.Reading(seconds, Torque.ofNewtonMillimetres(nmm), new Resolution(step));
    }

    @Test
    void a_step_is_worth_its_uniform_deviation() {
        assertEquals(0.29, new Resolution(1).uniformDeviation(), 0.002);
        assertEquals(0, Resolution.EXACT.uniformDeviation());
    }

    @Test
    void a_meter_is_read_to_tenths_of_its_division_whatever_is_typed() {
        Resolution meter = Resolution.ofMeter(DIVISION);
        assertEquals(0.0353, meter.step(), 1e-9);
        assertEquals(meter, new Resolution(0.0001).orCoarser(meter));
        assertEquals(0.07, new Resolution(0.07).orCoarser(meter).step());
    }

    @Test
    void two_readings_are_a_hold_and_its_error_is_that_of_the_readings() {
        Hold hold = Hold.of(List.of(at(10, 5.0, 0.07), at(100, 4.9, 0.07)));
        assertEquals(0.1 / 5.1, hold.bleed(), 1e-9);
        // one decade: Σ(x − mean)² = 0.5, so the slope's error is 0.07/√12/√0.5 (calc)
        assertEquals(0.07 / Math.sqrt(12) / Math.sqrt(0.5) / 5.1, hold.deviation(), 1e-9);
    }

    @Test
    void a_line_without_scatter_is_no_surer_than_its_readings() {
        Hold coarse = Hold.of(List.of(at(10, 5.0, 0.07), at(31.622776601683793, 4.95, 0.07), at(100, 4.9, 0.07)));
        assertTrue(coarse.deviation() > 0.005, coarse.toString());
        Hold exact = Hold.of(List.of(at(10, 5.0, 0), at(31.622776601683793, 4.95, 0), at(100, 4.9, 0)));
        assertEquals(0, exact.deviation(), 1e-9);
    }

    @Test
    void a_hold_read_too_coarsely_for_its_length_says_nothing() {
        assertThrows(IllegalArgumentException.class, () -> Hold.of(List.of(at(10, 5.0, 0.7), at(20, 4.9, 0.7))));
        assertThrows(IllegalArgumentException.class, () -> Hold.of(List.of(at(10, 5.0, 0.07))));
        assertThrows(IllegalArgumentException.class, () -> Hold.of(List.of(at(10, 5, 0), at(10, 4.9, 0))));
    }

    @Test
    void numbers_are_as_fine_as_the_last_digit_that_any_of_them_has() {
        assertEquals(0.01, Resolution.ofDigits(103, 104.62, 98.5).step(), 1e-12);
        assertEquals(1, Resolution.ofDigits(103, 104).step());
        assertEquals(Resolution.EXACT, Resolution.ofDigits(1 / 3.0, Math.PI), "what was computed has no last digit");
    }

    @Test
    void torques_are_as_fine_as_the_digits_in_the_unit_of_the_meter_whatever_they_are_kept_in() {
        double inchOunce = Torque.ofInchOunces(1).newtonMillimetres();
        assertEquals(
                0.01 * inchOunce,
                Resolution.ofTorques(0.62 * inchOunce, 0.5 * inchOunce).step(),
                1e-9);
        assertEquals(0.1, Resolution.ofTorques(4.1, 5.2).step(), 1e-9);
        double gram = Torque.ofGramCentimetres(1).newtonMillimetres();
        assertEquals(gram, Resolution.ofTorques(43 * gram, 51 * gram).step(), 1e-9);
    }

    @Test
    void no_interval_is_narrower_than_the_step_of_reading_leaves_it() {
        Sample alike = Sample.of(103, 103, 103);
        assertEquals(0, alike.predictionInterval(0.9).high() - alike.mean());
        double half = alike.readIn(new Resolution(1)).predictionInterval(0.9).high() - 103;
        // t(0.95; 2) = 2.920 (Student's t, published) times 1/√12 times √(1 + 1/3)
        assertEquals(2.920 / Math.sqrt(12) * Math.sqrt(4 / 3.0), half, 0.001);
        Sample wide = Sample.of(90, 100, 110);
        assertEquals(
                wide.predictionInterval(0.9),
                wide.readIn(new Resolution(0.01)).predictionInterval(0.9),
                "scatter leads");
    }

    @Test
    void a_line_through_points_that_fit_too_well_is_known_no_finer_than_they_were_read() {
        StraightLine line = StraightLine.through(new double[] {1, 2, 3, 4}, new double[] {10, 12, 14, 16});
        assertEquals(0, line.slopeError(), 1e-9);
        // Σ(x − mean x)² = 5; both sides' steps, that of x carried over by the slope of 2 (calc)
        assertEquals(
                Math.hypot(0.1, 2 * 0.5) / Math.sqrt(12) / Math.sqrt(5),
                line.readIn(new Resolution(0.5), new Resolution(0.1)).slopeError(),
                1e-9);
    }

    @Test
    void a_band_of_one_curve_is_as_wide_as_the_step_in_which_it_was_read() {
        TorqueCurve curve = TorqueCurve.of(List.of(
                new TorqueReading(100, Torque.ofNewtonMillimetres(2)),
                new TorqueReading(200, Torque.ofNewtonMillimetres(4))));
        Length loop = Length.ofMillimetres(470);
        Mass mass = Mass.ofGrams(1.7);
        BatchBand.Band band = BatchBand.of(
                        List.of(new BatchBand.MotorCurve("m", curve, loop, mass, new Resolution(0.5))))
                .at(200, loop, mass)
                .orElseThrow();
        assertEquals(4, band.median().newtonMillimetres(), 1e-9);
        assertEquals(3.8, band.low().newtonMillimetres(), 1e-9);
        assertEquals(4.2, band.high().newtonMillimetres(), 1e-9);
    }
}
