package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.motor.Hold;
import org.skeinday.units.Misread;
import org.skeinday.units.Torque;

class HeldReadTest {
    private static final double OZ = Torque.ofInchOunces(1).newtonMillimetres();

    @Test
    void torque_and_time_are_read_as_they_are_called_out() {
        List<HeldRead> read = HeldRead.parse("0.78 at 0:40; 0,76 at 1:30, 5.3 mN·m at 120", "in-ozf", 0.05 * OZ);
        assertEquals(
                List.of(40.0, 90.0, 120.0), read.stream().map(HeldRead::seconds).toList());
        assertEquals(0.78 * OZ, read.get(0).torqueNmm(), 1e-9);
        assertEquals(5.3, read.get(2).torqueNmm(), 1e-9);
        assertEquals("0.78 in-ozf at 0:40", read.get(0).typed(), "means the same whatever the page's unit is");
        assertEquals(read.subList(0, 1), HeldRead.parse(read.get(0).typed(), "mN-m", 0.05 * OZ));
    }

    @Test
    void a_reading_is_as_fine_as_its_last_digit_and_no_finer_than_a_tenth_of_a_division() {
        assertEquals(
                0.01 * OZ,
                HeldRead.parse("0.78 at 0:40", "in-ozf", 0.05 * OZ).get(0).resolutionNmm(),
                1e-9);
        assertEquals(
                0.005 * OZ,
                HeldRead.parse("0.7812 at 0:40", "in-ozf", 0.05 * OZ).get(0).resolutionNmm(),
                1e-9);
        assertEquals(
                0.1 * OZ, HeldRead.parse("0.8 at 0:40", "in-ozf", null).get(0).resolutionNmm(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.78", "at 0:40", "0.78 at", "0.78 at noon", "0.78 at 0", "0 at 0:40", "0.78 kg at 0:40"})
    void what_is_no_reading_is_named(String typed) {
        assertThrows(IllegalArgumentException.class, () -> HeldRead.parse(typed, "in-ozf", null));
    }

    @Test
    void too_many_are_a_slip() {
        assertThrows(Misread.class, () -> HeldRead.parse("0.78 at 0:40;".repeat(21), "in-ozf", null));
    }

    @Test
    void typed_readings_make_a_hold_without_any_mark_crossed() {
        Wind tapped = new WindFixture()
                .up(1_000, 2_000)
                .phase(WindPhase.STOPPED, 10_000)
                .phase(WindPhase.BACKED_OFF, 14_000)
                .phase(WindPhase.OFF_METER, 120_000)
                .wind();
        assertEquals(List.of(), tapped.holdReadings());
        Wind typed = new Wind(
                tapped.begun(),
                tapped.phases(),
                tapped.marks(),
                List.of(),
                null,
                HeldRead.parse("0.76 at 1:44; 0.78 at 0:14", "in-ozf", 0.05 * OZ));
        assertEquals(
                List.of(10.0, 100.0),
                typed.holdReadings().stream().map(Hold.Reading::seconds).toList(),
                "four seconds went by until the last turn was off");
        Hold hold = Hold.of(typed.holdReadings());
        assertEquals(0.02 / 0.80, hold.bleed(), 1e-9);
        assertTrue(hold.deviation() > 0);
    }
}
