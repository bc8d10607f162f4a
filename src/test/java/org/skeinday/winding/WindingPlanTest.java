package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.skeinday.units.Length;

class WindingPlanTest {
    private static final double LOOP_IN = 18.5;

    private static WindingPlan plan(String fraction, String stretch, String share, @Nullable Double laneIn) {
        return WindingPlan.compute(new WindingRequest(
                Length.ofInches(LOOP_IN),
                new BigDecimal("2700"),
                BigDecimal.TEN,
                new BigDecimal(fraction),
                new BigDecimal(stretch),
                new BigDecimal(share),
                Length.ofInches(11),
                4,
                laneIn == null ? null : Length.ofInches(laneIn)));
    }

    /** The worked case of the trade's notes: 83.25 in; 229.5 floored; 126; 2250 motor turns. */
    @Test
    void the_worked_case_comes_out() {
        WindingPlan plan = plan("0.85", "4.5", "0.55", null);
        assertEquals(83.25, plan.fullStretch().inches(), 1e-9);
        assertEquals(229, plan.targetCrankTurns());
        assertEquals(126, plan.atFullStretchCrankTurns());
        assertEquals(0, plan.launchMotorTurns().compareTo(new BigDecimal("2250")));
        assertEquals(List.of(), plan.warnings());
    }

    @Test
    void the_walk_in_goes_straight_from_full_stretch_to_the_finish_every_ten_turns() {
        List<WindingPlan.Step> steps = plan("0.85", "4.5", "0.55", null).walkIn();
        assertEquals(
                List.of(126, 130, 140, 150, 160, 170, 180, 190, 200, 210, 220, 229),
                steps.stream().map(WindingPlan.Step::crankTurns).toList());
        assertEquals(83.25, steps.get(0).distance().inches(), 1e-9);
        assertEquals(83.25 - 72.25 * 4 / 103, steps.get(1).distance().inches(), 1e-9);
        assertEquals(11, steps.get(11).distance().inches(), 1e-9);
    }

    @Test
    void five_marks_of_tape_divide_the_way_evenly() {
        List<WindingPlan.Step> marks = plan("0.85", "4.5", "0.55", null).floorMarks();
        assertEquals(5, marks.size());
        assertEquals(83.25 - 72.25 / 2, marks.get(2).distance().inches(), 1e-9);
        assertEquals(229, marks.get(4).crankTurns());
    }

    @Test
    void a_fraction_is_decimal_and_never_a_hair_less() {
        WindingPlan plan = WindingPlan.compute(new WindingRequest(
                Length.ofInches(20),
                new BigDecimal("1000"),
                BigDecimal.TEN,
                new BigDecimal("0.29"), // 0.29 * 1000 / 10 is 28.999999999999996 in binary
                new BigDecimal("4"),
                new BigDecimal("0.6"),
                Length.ofInches(11),
                2,
                null));
        assertEquals(29, plan.targetCrankTurns());
    }

    @Test
    void a_lane_of_three_lengths_cuts_distance_and_target_in_proportion() {
        WindingPlan plan = plan("0.85", "4.5", "0.55", 3 * LOOP_IN);
        assertEquals(55.5, plan.fullStretch().inches(), 1e-9);
        assertEquals(196, plan.targetCrankTurns()); // 229.5 * 3 / 3.5 = 196.7
        assertEquals(2, plan.warnings().size());
    }

    @Test
    void a_lane_that_is_just_long_enough_cuts_nothing() {
        assertEquals(List.of(), plan("0.85", "4.5", "0.55", 83.25).warnings());
        assertEquals(1, plan("0.85", "4.5", "0.55", 83.2).warnings().size());
        assertEquals(229, plan("0.85", "4.5", "0.55", 3.5 * LOOP_IN).targetCrankTurns());
    }

    @Test
    void a_small_stretch_that_was_asked_for_is_treated_as_one_that_the_lane_forces() {
        assertEquals(
                plan("0.85", "4.5", "0.55", 3 * LOOP_IN).targetCrankTurns(),
                plan("0.85", "3", "0.55", null).targetCrankTurns());
    }

    @Test
    void all_turns_at_full_stretch_still_end_at_the_finish() {
        List<WindingPlan.Step> steps = plan("0.85", "4.5", "1", null).walkIn();
        assertEquals(2, steps.size());
        assertEquals(11, steps.get(1).distance().inches(), 1e-9);
    }

    @Test
    void each_value_beyond_sense_is_refused_by_its_name() {
        refused("The fraction of breaking turns", () -> plan("1.21", "4.5", "0.55", null));
        refused("The stretch", () -> plan("0.85", "0.9", "0.55", null));
        refused("The share at full stretch", () -> plan("0.85", "4.5", "0", null));
        refused("The lane", () -> plan("0.85", "4.5", "0.55", 18.0));
        refused("The plan must come to more crank turns than the 4", () -> plan("0.01", "4.5", "0.55", null));
        refused("The use", () -> WindingPolicy.fraction(0));
    }

    @Test
    void each_use_has_its_share_of_breaking_turns() {
        assertEquals(new BigDecimal("0.80"), WindingPolicy.fraction(1));
        assertEquals(new BigDecimal("0.85"), WindingPolicy.fraction(2));
        assertEquals(new BigDecimal("0.90"), WindingPolicy.fraction(5));
        assertEquals(BigDecimal.valueOf(4), WindingPolicy.stretch(1));
        assertEquals(BigDecimal.valueOf(5), WindingPolicy.stretch(2));
    }

    private static void refused(String words, org.junit.jupiter.api.function.Executable asking) {
        String said = String.valueOf(
                assertThrows(IllegalArgumentException.class, asking).getMessage());
        assertTrue(said.startsWith(words), said);
    }
}
