package org.skeinday.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ToldOfBreakTest {
    private static final MeterScale SCALE = new MeterScale(9, "9 mN·m");

    @Test
    void turns_above_twice_the_breaking_turns_and_a_torque_off_the_meter_are_asked_about() {
        assertEquals(List.of(), new ToldOfBreak(5400.0, 9.0, SCALE, 2700.0).doubts());
        assertEquals(
                List.of(Unlikely.TURNS_BEYOND_BREAKING, Unlikely.PEAK_OFF_THE_METER),
                new ToldOfBreak(5401.0, 9.1, SCALE, 2700.0)
                        .doubts().stream().map(Doubted::why).toList());
        assertEquals(
                List.of(), new ToldOfBreak(99_000.0, 90.0, null, null).doubts(), "nothing is known to hold it against");
        assertEquals(List.of(), new ToldOfBreak(null, null, SCALE, 2700.0).doubts());
    }

    @Test
    void a_confirmation_is_about_its_number_and_no_other() {
        var told = new ToldOfBreak(9000.0, 2.0, SCALE, 2700.0);
        ValueMarks so =
                ValueMarks.of(List.of(new ValueMarked("step", "crank-turns", 9000.0, "typed", true, null, null)));
        assertTrue(told.open(Measured.CRANK_TURNS, ValueMarks.NONE).startsWith("That is 9000 motor turns"));
        assertEquals("", told.open(Measured.CRANK_TURNS, so));
        assertTrue(new ToldOfBreak(9001.0, 2.0, SCALE, 2700.0)
                .open(Measured.CRANK_TURNS, so)
                .contains("breaks at about 2700"));
        assertEquals("", told.open(Measured.PEAK_TORQUE, ValueMarks.NONE));
    }
}
