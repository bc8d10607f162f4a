package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.BreakTest;
import org.skeinday.motor.Ceiling;
import org.skeinday.motor.Section;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Level;

class AimTest {
    private static final Length LOOP = Length.ofInches(18);
    private static final Mass MASS = Mass.ofGrams(1.6);

    /** Shares of the trade's notes, common practice: 0.75 first handling, 0.85 practised; back-off 5 and 2. */
    @Test
    void a_beginner_stops_earlier_and_takes_more_off() {
        var test = new BreakTest("m", LOOP, MASS, 2700, Torque.ofNewtonMillimetres(10));
        Section section = Section.of(MASS, LOOP);
        for (Level level : Level.values()) {
            Ceiling ceiling = Ceiling.fromBreakTests(List.of(test), "m", section, level.ceilingShare());
            Aim aim = new Aim(ceiling, null, level);
            double expected = level == Level.PRACTISED ? 8.5 : 7.5;
            assertEquals(expected, aim.ceilingTorque().newtonMillimetres(), 1e-9);
            assertEquals(level == Level.PRACTISED ? 2 : 5, aim.level().backOff());
            assertTrue(aim.ceilingWords(UnitSystem.METRIC).endsWith("from 1 break test"));
        }
    }

    @Test
    void without_a_break_test_the_count_ends_the_wind() {
        assertNull(Aim.practice().ceilingTorque());
        assertEquals("not known: the turns limit ends the wind", Aim.practice().ceilingWords(UnitSystem.INCH));
        assertEquals("not set", Aim.practice().launchWords(UnitSystem.INCH));
    }

    @Test
    void torques_are_above_0_and_what_is_wanted_is_not_above_the_ceiling() {
        assertEquals(2.0, new AttemptAimed("a", 2.0, "2", 2.0, "2").launchNmm());
        assertThrows(IllegalArgumentException.class, () -> new AttemptAimed("a", 2.01, "2.01", 2.0, "2"));
        assertThrows(IllegalArgumentException.class, () -> new AttemptAimed("a", 0.0, "0", null, null));
        assertThrows(IllegalArgumentException.class, () -> new AttemptAimed("a", null, null, -1.0, "-1"));
    }

    @Test
    void a_contact_without_a_reason_says_nothing() {
        assertNull(new FlightJudged("a", null, null, null, null).contact());
        var wall = new FlightJudged("a", "touched a wall", 31_000L, true, 1);
        assertEquals(Duration.ofSeconds(31), wall.contact());
        assertThrows(IllegalArgumentException.class, () -> new FlightJudged("a", null, 1L, null, null));
        assertThrows(IllegalArgumentException.class, () -> new FlightJudged("a", "  ", 1L, null, null));
        assertThrows(IllegalArgumentException.class, () -> new FlightJudged("a", "  ", null, null, null));
    }
}
