package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.LaunchTorque;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

class BatchWindsTest {
    private static final BatchWinds.Size SIZE = new BatchWinds.Size(Length.ofInches(18), Mass.ofGrams(1.6));
    private static final Map<String, BatchWinds.Size> SIZES = Map.of("motor-1", SIZE);

    private static Wind wind(String id, boolean paced) {
        WindFixture made = WindFixture.whole().counted(120, 200, 4.0);
        Wind whole = made.wind();
        WindBegun b = whole.begun();
        var begun = new WindBegun(
                id,
                b.attemptId(),
                b.motorId(),
                null,
                b.meter(),
                b.ratio(),
                b.divisionNmm(),
                b.fullScaleNmm(),
                b.targetCrankTurns(),
                b.atFullCrankTurns(),
                b.backOffCrankTurns(),
                b.ceilingNmm(),
                b.stop(),
                b.use(),
                b.device(),
                null,
                b.atMs(),
                paced);
        return Wind.of(
                begun,
                whole.phases().stream()
                        .map(p -> new WindPhase(p.id(), id, p.phase(), p.elapsedMs(), p.atMs()))
                        .toList(),
                whole.marks().stream()
                        .map(m -> new WindMark(m.id(), id, m.step(), m.elapsedMs(), m.atMs(), false, null))
                        .toList(),
                new WindCounted(id, 120, 200, 4.0, paced));
    }

    private static List<Wind> winds(int many) {
        List<Wind> winds = new ArrayList<>();
        for (int i = 0; i < many; i++) {
            winds.add(wind("w" + i, false));
        }
        return winds;
    }

    @Test
    void two_winds_make_no_band_and_three_do_with_the_torque_that_was_read() {
        assertTrue(BatchWinds.of(winds(2), SIZES, "meter-1").winding(SIZE).isEmpty());
        var band = BatchWinds.of(winds(3), SIZES, "meter-1").winding(SIZE).orElseThrow();
        var at = band.apply(2000).orElseThrow();
        assertEquals(6 * 0.5, at.median().newtonMillimetres(), 1e-9);
        assertEquals(3, at.curves());
        assertTrue(band.apply(2001).isEmpty(), "nothing is extrapolated");
    }

    @Test
    void winds_of_another_meter_to_a_metronome_uncounted_or_the_same_one_are_left_out() {
        assertEquals(0, BatchWinds.of(winds(3), SIZES, "meter-2").winds().size());
        assertEquals(0, BatchWinds.of(winds(3), SIZES, null).winds().size());
        assertEquals(
                0,
                BatchWinds.of(List.of(wind("p", true)), SIZES, "meter-1")
                        .winds()
                        .size());
        assertEquals(
                0,
                BatchWinds.of(List.of(WindFixture.whole().wind()), SIZES, "meter-1")
                        .winds()
                        .size());
        assertEquals(0, BatchWinds.of(winds(3), Map.of(), "meter-1").winds().size());
        assertEquals(
                2, BatchWinds.before(wind("w1", false), winds(3), SIZES).winds().size());
    }

    @Test
    void what_a_motor_gives_at_launch_comes_from_turns_taken_off_never_from_winding() {
        BatchWinds batch = BatchWinds.of(winds(3), SIZES, "meter-1");
        assertTrue(batch.launch(SIZE, 1970) instanceof LaunchTorque.Forecast);
        assertTrue(batch.launch(SIZE, 1500) instanceof LaunchTorque.NoForecast, "nobody unwound so far");
    }

    @Test
    void a_hold_read_once_says_nothing_of_the_bleed() {
        assertFalse(BatchWinds.of(winds(3), SIZES, "meter-1").bleed().isKnown());
    }
}
