package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Planned: 200 crank turns, 120 of them at full stretch; the torque limit at 8 N·mm, 16 divisions. */
class ToldTurnsTest {
    private static ToldTurns told(WindFixture wind) {
        return ToldTurns.of(wind.wind());
    }

    @Test
    void a_wind_that_went_as_planned_may_be_confirmed_as_planned() {
        var told = told(new WindFixture().phase(WindPhase.STEPPING_IN, 60_000).phase(WindPhase.STOPPED, 100_000));
        assertEquals(new ToldTurns(120, 200, ""), told);
        assertFalse(told.isEarly());
    }

    @Test
    void one_that_ended_early_by_its_pace_offers_what_the_keys_told() {
        var told = told(new WindFixture().phase(WindPhase.STEPPING_IN, 60_000).phase(WindPhase.STOPPED, 75_000));
        assertTrue(told.isEarly());
        assertEquals(120, told.atFull());
        assertEquals(150, told.stop(), "120 turns in 60 s are 150 in 75 s");
        assertEquals("By the pace it ended before the turns limit of 200", told.early());
    }

    @Test
    void just_below_nineteen_twentieths_of_the_limit_is_early_and_just_above_is_not() {
        var stopped = new WindFixture().phase(WindPhase.STEPPING_IN, 60_000);
        assertTrue(told(stopped.phase(WindPhase.STOPPED, 94_700)).isEarly(), "189");
        var later = new WindFixture().phase(WindPhase.STEPPING_IN, 60_000);
        assertFalse(told(later.phase(WindPhase.STOPPED, 95_000)).isEarly(), "190");
    }

    @Test
    void nobody_who_never_walked_in_wound_the_planned_turns() {
        var told = told(new WindFixture().phase(WindPhase.STOPPED, 40_000));
        assertEquals("Nobody walked in", told.early());
        assertNull(told.stop());
        assertNull(told.atFull());
    }

    @Test
    void the_torque_limit_ended_it_before_the_count() {
        WindFixture wind = new WindFixture().phase(WindPhase.STEPPING_IN, 60_000);
        for (int i = 1; i <= 16; i++) {
            wind.up(i * 4_000L);
        }
        var told = told(wind.phase(WindPhase.STOPPED, 98_000));
        assertEquals("The needle reached the torque limit", told.early());
        assertEquals(196, told.stop(), "by the pace");
    }

    @Test
    void without_a_plan_nothing_is_offered() {
        var told = told(new WindFixture().noPlan().phase(WindPhase.STOPPED, 40_000));
        assertNull(told.stop());
    }

    @Test
    void without_a_key_for_the_last_turn_nothing_is_offered_however_long_it_took() {
        WindFixture untapped = new WindFixture().phase(WindPhase.STEPPING_IN, 60_000);
        assertEquals(new ToldTurns(null, null, ""), told(untapped.phase(WindPhase.OFF_METER, 130_000)));
        assertEquals(
                new ToldTurns(null, null, ""), told(new WindFixture().up(20_000).phase(WindPhase.STEPPING_IN, 60_000)));
    }

    @Test
    void a_plan_that_has_no_turns_at_full_stretch_tells_no_pace_and_offers_nothing() {
        var walked = new WindFixture().noFullStretch().phase(WindPhase.STEPPING_IN, 60_000);
        assertEquals(new ToldTurns(null, null, ""), told(walked.phase(WindPhase.STOPPED, 100_000)));
        var stood = new WindFixture().noFullStretch().phase(WindPhase.STOPPED, 100_000);
        assertEquals(new ToldTurns(null, null, ""), told(stood));
    }
}
