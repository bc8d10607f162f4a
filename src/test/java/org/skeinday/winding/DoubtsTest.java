package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.BatchBand;
import org.skeinday.units.Torque;

class DoubtsTest {
    private static List<Doubt> doubts(WindFixture taps) {
        return MarkDoubts.of(taps.wind(), Optional.empty());
    }

    private static List<Doubt> doubts(WindFixture taps, double bandHighNmm) {
        DoubleFunction<Optional<BatchBand.Band>> band = turns -> Optional.of(new BatchBand.Band(
                Torque.ofNewtonMillimetres(0),
                Torque.ofNewtonMillimetres(0),
                Torque.ofNewtonMillimetres(bandHighNmm),
                3));
        return MarkDoubts.of(taps.wind(), Optional.of(band));
    }

    private static WindFixture climbed(int marks) {
        return new WindFixture().climb(marks, 1_000);
    }

    @Test
    void a_quiet_wind_has_no_doubts() {
        assertEquals(List.of(), doubts(WindFixture.whole().counted(120, 200, 4.0), 100));
    }

    @Test
    void one_mark_down_of_twenty_is_five_per_cent_and_no_doubt_but_of_nineteen_it_is() {
        assertEquals(List.of(), doubts(climbed(20).down(30_000)));
        assertEquals(
                List.of(new Doubt("m20", Doubt.Kind.FELL, "Down from mark 19 to mark 18, 5 %, with no step in")),
                doubts(climbed(19).down(30_000)));
    }

    @Test
    void small_falls_add_up_from_the_highest_mark_and_are_named_once() {
        assertEquals(
                List.of(new Doubt("m32", Doubt.Kind.FELL, "Down from mark 30 to mark 28, 7 %, with no step in")),
                doubts(climbed(30).meter(0.5, 40.0).down(40_000, 45_000, 50_000)));
    }

    @Test
    void a_tap_back_within_two_seconds_is_a_correction_and_a_later_one_a_doubt() {
        assertEquals(List.of(), doubts(climbed(10).down(12_000)));
        assertEquals(
                List.of("m11"),
                doubts(climbed(10).down(12_001)).stream().map(Doubt::markId).toList());
    }

    @Test
    void stepping_in_lowers_the_torque_without_a_doubt() {
        assertEquals(
                List.of(),
                doubts(climbed(10).phase(WindPhase.STEPPING_IN, 29_999).down(30_000)));
        assertEquals(
                1,
                doubts(climbed(10).down(30_000).phase(WindPhase.STEPPING_IN, 30_000))
                        .size());
    }

    @Test
    void a_back_off_without_any_step_in_is_no_doubt() {
        assertEquals(
                List.of(), doubts(climbed(10).phase(WindPhase.STOPPED, 20_000).down(30_000)));
    }

    @Test
    void two_marks_within_150_ms_are_a_jump_and_151_ms_apart_they_are_not() {
        assertEquals(
                List.of(new Doubt("m2", Doubt.Kind.JUMPED, "Up from mark 0 to mark 2 within 150 ms")),
                doubts(new WindFixture().up(5_000, 5_150)));
        assertEquals(List.of(), doubts(new WindFixture().up(5_000, 5_151)));
    }

    @Test
    void a_jump_that_was_taken_back_at_once_or_left_out_is_no_doubt() {
        assertEquals(List.of(), doubts(new WindFixture().up(5_000, 5_100).down(6_000)));
        assertEquals(List.of(), doubts(new WindFixture().up(5_000, 5_100).leaveOut("m2")));
    }

    /** Mark 5 is 2.5 N·mm: a quarter above 2 exactly. */
    @Test
    void a_quarter_above_the_band_is_no_doubt_and_a_hair_more_is() {
        WindFixture taps = climbed(5).phase(WindPhase.STOPPED, 5_000).counted(null, 100, null);
        assertEquals(List.of(), doubts(taps, 2));
        assertEquals(
                List.of(new Doubt(
                        "m5", Doubt.Kind.ABOVE_BAND, "Mark 5 is 26 % above the batch's band at 1000 motor turns")),
                doubts(taps, 1.99));
    }

    @Test
    void of_a_run_above_the_band_the_first_is_named() {
        WindFixture taps = climbed(8).phase(WindPhase.STOPPED, 8_000).counted(null, 100, null);
        assertEquals(List.of("m6"), doubts(taps, 2).stream().map(Doubt::markId).toList());
    }

    @Test
    void a_band_is_not_asked_where_turns_are_only_estimated_or_it_does_not_reach() {
        WindFixture taps = climbed(8).phase(WindPhase.STEPPING_IN, 60_000);
        assertEquals(List.of(), doubts(taps, 1));
        Wind counted =
                taps.phase(WindPhase.STOPPED, 90_000).counted(120, 180, 0.0).wind();
        assertEquals(List.of(), MarkDoubts.of(counted, Optional.of(turns -> Optional.empty())));
    }

    @Test
    void the_last_mark_of_the_meter_is_no_doubt_and_each_one_beyond_it_is() {
        assertEquals(List.of(), doubts(climbed(20).meter(0.1, 2.0)));
        assertEquals(
                List.of(
                        new Doubt(
                                "m21", Doubt.Kind.BEYOND_METER, "Mark 21 lies beyond the meter, which ends at mark 20"),
                        new Doubt(
                                "m22",
                                Doubt.Kind.BEYOND_METER,
                                "Mark 22 lies beyond the meter, which ends at mark 20")),
                doubts(climbed(22).meter(0.1, 2.0)));
    }

    @Test
    void a_meter_that_is_not_known_has_no_end() {
        assertEquals(List.of(), doubts(climbed(22).meter(0.1, null)));
        assertEquals(List.of(), doubts(climbed(22).meter(null, null)));
    }

    @Test
    void doubts_stand_in_the_order_of_the_taps() {
        WindFixture taps = new WindFixture()
                .meter(0.5, 1.0)
                .up(5_000, 5_100, 9_000)
                .down(12_000)
                .phase(WindPhase.STOPPED, 20_000)
                .counted(null, 100, null);
        assertEquals(
                List.of("m2 JUMPED", "m3 BEYOND_METER", "m3 ABOVE_BAND", "m4 FELL"),
                doubts(taps, 1).stream().map(d -> d.markId() + " " + d.kind()).toList());
    }
}
