package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class WindCountTest {
    private static double turns(Wind wind, long elapsedMs) {
        return wind.turns().at(elapsedMs).orElseThrow().crankTurns();
    }

    @Test
    void counts_that_were_entered_are_joined_by_straight_lines() {
        Wind wind = WindFixture.whole().counted(126, 206, 4.0).wind();
        assertEquals(0, turns(wind, 0));
        assertEquals(63, turns(wind, 30_000), 1e-9);
        assertEquals(126, turns(wind, 60_000));
        assertEquals(166, turns(wind, 80_000), 1e-9);
        assertEquals(206, turns(wind, 100_000));
        assertEquals(204, turns(wind, 102_000), 1e-9);
        assertEquals(202, turns(wind, 104_000));
        assertEquals(202, turns(wind, 500_000));
        assertFalse(wind.turns().at(30_000).orElseThrow().estimated());
    }

    @Test
    void nobody_counted_at_full_stretch_so_one_line_goes_to_the_stop() {
        Wind wind = WindFixture.whole().counted(null, 206, null).wind();
        assertEquals(103, turns(wind, 50_000), 1e-9);
        assertEquals(206, turns(wind, 500_000));
    }

    @Test
    void before_the_first_step_in_there_is_no_pace_and_so_no_estimate() {
        assertEquals(
                Optional.empty(), new WindFixture().up(20_000).wind().turns().at(30_000));
        Wind wind = new WindFixture().phase(WindPhase.STEPPING_IN, 60_000).wind();
        assertEquals(new Count(60, true), wind.turns().at(30_000).orElseThrow());
        assertEquals(new Count(120, true), wind.turns().at(60_000).orElseThrow());
        assertEquals(new Count(140, true), wind.turns().at(70_000).orElseThrow());
    }

    @Test
    void without_a_plan_there_is_no_estimate() {
        Wind wind =
                new WindFixture().noPlan().phase(WindPhase.STEPPING_IN, 60_000).wind();
        assertEquals(Optional.empty(), wind.turns().at(70_000));
    }

    /** 2 crank turns a second: 220, a tenth above the target of 200, at 110 s. */
    @Test
    void an_estimate_ends_a_tenth_above_the_target() {
        Wind wind = new WindFixture().phase(WindPhase.STEPPING_IN, 60_000).wind();
        assertEquals(219, turns(wind, 109_500), 1e-9);
        assertEquals(220, turns(wind, 110_000), 1e-9);
        assertEquals(220, turns(wind, 111_000), 1e-9);
    }

    @Test
    void an_estimate_stands_still_at_the_stop_and_loses_the_planned_turns_in_the_back_off() {
        Wind wind = WindFixture.whole().wind();
        assertEquals(200, turns(wind, 100_000), 1e-9);
        assertEquals(198, turns(wind, 102_000), 1e-9);
        assertEquals(196, turns(wind, 200_000), 1e-9);
        assertTrue(wind.turns().at(200_000).orElseThrow().estimated());
    }

    @Test
    void an_entered_count_stands_in_place_of_the_estimate() {
        WindFixture taps = WindFixture.whole();
        assertTrue(taps.wind().turns().at(80_000).orElseThrow().estimated());
        assertEquals(
                new Count(150, false),
                taps.counted(110, 190, 4.0).wind().turns().at(80_000).orElseThrow());
    }

    @Test
    void counts_without_any_tap_say_nothing_of_the_time_between() {
        assertEquals(
                Optional.empty(),
                new WindFixture().counted(120, 200, 4.0).wind().turns().at(80_000));
    }

    @Test
    void back_off_and_stop_tapped_at_once_leave_the_last_reading_its_turns() {
        Wind wind = new WindFixture()
                .up(50_000, 100_000)
                .phase(WindPhase.STOPPED, 100_000)
                .phase(WindPhase.BACKED_OFF, 100_000)
                .counted(120, 200, 4.0)
                .wind();
        assertEquals(2000, wind.windingReadings().get(1).motorTurns());
        assertEquals(196, turns(wind, 100_001));
    }
}
