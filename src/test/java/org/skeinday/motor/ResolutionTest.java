package org.skeinday.motor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
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
}
