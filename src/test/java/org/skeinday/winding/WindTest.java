package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.Hold;
import org.skeinday.motor.Resolution;
import org.skeinday.motor.TorqueReading;
import org.skeinday.units.Torque;

class WindTest {
    private static Torque nmm(double torque) {
        return Torque.ofNewtonMillimetres(torque);
    }

    private static WindFixture empty() {
        return new WindFixture();
    }

    @Test
    void a_wind_goes_through_its_five_phases() {
        WindFixture taps = empty();
        assertEquals(Wind.Phase.WINDING_AT_FULL_STRETCH, taps.wind().phase());
        assertEquals(
                Wind.Phase.WALKING_IN,
                taps.phase(WindPhase.STEPPING_IN, 60_000).wind().phase());
        assertEquals(
                Wind.Phase.STOPPED, taps.phase(WindPhase.STOPPED, 90_000).wind().phase());
        assertEquals(
                Wind.Phase.HOLDING,
                taps.phase(WindPhase.BACKED_OFF, 95_000).wind().phase());
        assertEquals(
                Wind.Phase.OFF_METER,
                taps.phase(WindPhase.OFF_METER, 99_000).wind().phase());
    }

    @Test
    void winding_goes_on_after_a_mistaken_stop_where_it_was() {
        WindFixture atFull = empty().phase(WindPhase.STOPPED, 30_000).phase(WindPhase.AGAIN, 32_000);
        assertEquals(Wind.Phase.WINDING_AT_FULL_STRETCH, atFull.wind().phase());
        WindFixture walking = atFull.phase(WindPhase.STEPPING_IN, 60_000)
                .phase(WindPhase.STOPPED, 70_000)
                .phase(WindPhase.AGAIN, 71_000);
        assertEquals(Wind.Phase.WALKING_IN, walking.wind().phase());
        Wind wind = walking.phase(WindPhase.STOPPED, 100_000)
                .counted(120, 200, null)
                .wind();
        assertEquals(200, wind.turns().at(100_000).orElseThrow().crankTurns());
        assertEquals(140, wind.turns().at(70_000).orElseThrow().crankTurns(), 1e-9);
    }

    @Test
    void a_motor_off_the_meter_is_not_wound_again() {
        Wind wind = empty().phase(WindPhase.OFF_METER, 99_000)
                .phase(WindPhase.AGAIN, 100_000)
                .up(101_000)
                .wind();
        assertEquals(Wind.Phase.OFF_METER, wind.phase());
        assertEquals(List.of(), wind.crossings());
    }

    @Test
    void a_phase_that_is_tapped_twice_counts_from_its_first_tap() {
        Wind wind = empty().phase(WindPhase.STOPPED, 90_000)
                .phase(WindPhase.STOPPED, 95_000)
                .counted(null, 180, null)
                .wind();
        assertEquals(180, wind.turns().at(90_000).orElseThrow().crankTurns());
    }

    @Test
    void the_level_follows_the_taps_and_is_never_below_nothing() {
        Wind wind =
                empty().up(1_000, 5_000).down(9_000, 13_000, 17_000).up(21_000).wind();
        assertEquals(0, wind.level(999));
        assertEquals(1, wind.level(1_000));
        assertEquals(2, wind.level(8_999));
        assertEquals(0, wind.level(17_000));
        assertEquals(1, wind.level(21_000));
        assertEquals(OptionalInt.of(2), wind.peakLevel());
    }

    @Test
    void a_mark_that_is_left_out_lowers_all_after_it() {
        Wind wind = empty().climb(4, 1_000).leaveOut("m2").wind();
        assertEquals(3, wind.level(60_000));
        assertEquals(4, wind.marks().size());
    }

    @Test
    void a_tap_back_within_two_seconds_takes_the_mark_back_and_a_later_one_is_a_reading() {
        assertEquals(1, empty().up(1_000, 5_000).down(7_000).wind().crossings().size());
        assertEquals(3, empty().up(1_000, 5_000).down(7_001).wind().crossings().size());
    }

    @Test
    void a_needle_that_falls_right_after_the_stop_is_no_correction() {
        WindFixture taps =
                empty().up(1_000, 5_000).phase(WindPhase.STOPPED, 5_500).down(6_000);
        assertEquals(OptionalInt.of(2), taps.wind().peakLevel());
        assertEquals(1, taps.wind().level(6_000));
    }

    @Test
    void torque_is_the_division_times_the_mark_and_unknown_without_a_division() {
        Wind known = WindFixture.whole().wind();
        assertEquals(Optional.of(nmm(1.5)), known.torque(3));
        assertEquals(Optional.of(nmm(3)), known.peakTorque());
        assertEquals(Optional.of(nmm(1.5)), known.launchTorque());
        Wind unknown =
                WindFixture.whole().meter(null, null).counted(120, 200, 4.0).wind();
        assertEquals(Optional.empty(), unknown.torque(3));
        assertEquals(Optional.empty(), unknown.peakTorque());
        assertEquals(List.of(), unknown.windingReadings());
        assertEquals(List.of(), unknown.holdReadings());
        assertEquals(OptionalInt.empty(), unknown.ceilingLevel());
        assertEquals(OptionalInt.of(3), unknown.launchLevel());
    }

    @Test
    void nobody_read_the_meter_so_there_is_no_peak_and_no_launch_torque() {
        Wind alone = empty().counted(120, 200, 4.0).wind();
        assertEquals(Optional.empty(), alone.peakTorque());
        assertEquals(Optional.empty(), alone.launchTorque());
        assertEquals(Optional.of(1960.0), alone.turns().atLaunch());
    }

    @Test
    void turns_at_launch_are_not_known_until_the_back_off_is_counted() {
        assertEquals(Optional.empty(), empty().wind().turns().atLaunch());
        assertEquals(
                Optional.empty(), empty().counted(120, 200, null).wind().turns().atLaunch());
        assertEquals(
                Optional.of(1965.0),
                empty().counted(120, 200, 3.5).wind().turns().atLaunch());
    }

    @Test
    void the_ceiling_is_the_last_mark_not_above_it() {
        assertEquals(OptionalInt.of(16), empty().meter(0.5, 20.0).wind().ceilingLevel());
        assertEquals(OptionalInt.of(15), empty().meter(0.501, 20.0).wind().ceilingLevel());
        assertEquals(OptionalInt.of(80), empty().meter(0.1, 20.0).wind().ceilingLevel());
    }

    @Test
    void readings_of_the_wind_stand_at_motor_turns_between_the_counts() {
        Wind wind = WindFixture.whole().counted(120, 200, 4.0).wind();
        assertEquals(
                List.of(
                        new TorqueReading(400, nmm(0.5)),
                        new TorqueReading(800, nmm(1)),
                        new TorqueReading(1000, nmm(1.5)),
                        new TorqueReading(1400, nmm(2)),
                        new TorqueReading(1600, nmm(2.5)),
                        new TorqueReading(2000, nmm(3))),
                wind.windingReadings());
    }

    @Test
    void readings_of_the_back_off_go_down_in_turns_and_those_of_the_hold_count_from_its_last_turn() {
        Wind wind = WindFixture.whole().counted(120, 200, 4.0).wind();
        assertEquals(
                List.of(new TorqueReading(1980, nmm(2.5)), new TorqueReading(1960, nmm(2))), wind.unwindingReadings());
        assertEquals(List.of(new Hold.Reading(20, nmm(1.5), Resolution.ofMeter(0.5))), wind.holdReadings());
    }

    @Test
    void while_turns_are_taken_off_their_number_is_not_known_so_there_are_no_readings_yet() {
        Wind wind = empty().up(1_000, 5_000)
                .phase(WindPhase.STOPPED, 9_000)
                .down(10_000)
                .counted(null, 50, 4.0)
                .wind();
        assertEquals(List.of(), wind.unwindingReadings());
        assertEquals(2, wind.windingReadings().size());
    }

    @Test
    void a_tablet_that_taps_nothing_but_marks_and_the_end_still_gives_readings() {
        WindFixture taps = empty().up(20_000, 40_000, 50_000, 100_000)
                .down(104_000)
                .phase(WindPhase.OFF_METER, 130_000)
                .counted(120, 200, 4.0);
        assertEquals(
                new TorqueReading(2000, nmm(2)), taps.wind().windingReadings().get(3));
        assertEquals(List.of(new TorqueReading(1960, nmm(1.5))), taps.wind().unwindingReadings());
    }

    @Test
    void counts_alone_end_the_wind_at_its_last_mark_up() {
        Wind wind =
                empty().up(20_000, 100_000).down(104_000).counted(120, 200, 4.0).wind();
        assertEquals(
                List.of(new TorqueReading(400, nmm(0.5)), new TorqueReading(2000, nmm(1))), wind.windingReadings());
        assertEquals(List.of(), wind.unwindingReadings());
    }

    @Test
    void nothing_taken_off_makes_a_falling_needle_a_hold() {
        WindFixture taps = empty().up(20_000, 100_000)
                .phase(WindPhase.STOPPED, 100_000)
                .down(110_000)
                .phase(WindPhase.OFF_METER, 130_000);
        assertEquals(1, taps.counted(120, 200, 4.0).wind().unwindingReadings().size());
        Wind held = taps.counted(120, 200, 0.0).wind();
        assertEquals(List.of(), held.unwindingReadings());
        assertEquals(List.of(new Hold.Reading(10, nmm(0.5), Resolution.ofMeter(0.5))), held.holdReadings());
    }

    @Test
    void a_wind_is_paced_when_it_was_begun_or_counted_so() {
        assertFalse(WindFixture.whole().counted(120, 200, 4.0).wind().paced());
        WindFixture taps = WindFixture.whole();
        WindBegun begun = taps.wind().begun();
        assertTrue(Wind.of(begun, taps.phases, taps.marks, new WindCounted(WindFixture.WIND, null, 9, null, true))
                .paced());
    }

    @Test
    void a_tap_of_another_wind_is_refused() {
        WindFixture taps = WindFixture.whole();
        List<WindMark> marks = List.of(new WindMark("m", "wind-2", 1, 5, 5, false, null));
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> Wind.of(taps.wind().begun(), List.of(), marks, null));
        assertEquals("Taps and counts must be of wind wind-1, but one was of wind-2", refused.getMessage());
    }
}
