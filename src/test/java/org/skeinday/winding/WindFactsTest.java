package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.skeinday.motor.StopRule;

class WindFactsTest {
    private static void refused(String message, Executable made) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, made).getMessage());
    }

    private static WindBegun torques(double division, double fullScale, double ceiling) {
        return WindFixture.begun(10, division, fullScale, 200, 120, ceiling, "torque");
    }

    @Test
    void a_ratio_of_nothing_is_refused_and_the_least_is_taken() {
        refused("The winder's ratio must be 0.1 to 100, but was 0", () -> WindFixture.begun(0, 0.5, 20.0, 200));
        refused("The winder's ratio must be 0.1 to 100, but was -5", () -> WindFixture.begun(-5, 0.5, 20.0, 200));
        refused(
                "The winder's ratio must be 0.1 to 100, but was NaN",
                () -> WindFixture.begun(Double.NaN, null, null, 1));
        assertEquals(0.1, WindFixture.begun(0.1, 0.5, 20.0, 200).ratio());
    }

    @Test
    void a_division_of_nothing_is_refused() {
        refused(
                "One division of the meter in N·mm must be above 0, but was 0",
                () -> WindFixture.begun(10, 0.0, 20.0, 200));
        assertEquals(0.01, WindFixture.begun(10, 0.01, 20.0, 200).divisionNmm());
    }

    @Test
    void full_scale_and_ceiling_are_one_division_at_least() {
        assertEquals(0.5, torques(0.5, 0.5, 0.5).ceilingNmm());
        refused(
                "The meter's full scale in N·mm, at least one division must be 0.5 to 10000, but was 0.49",
                () -> torques(0.5, 0.49, 8));
        refused(
                "The ceiling in N·mm, at least one division of the meter must be 0.5 to 10000, but was 0.49",
                () -> torques(0.5, 20, 0.49));
    }

    @Test
    void turns_at_full_stretch_may_reach_the_target_and_not_pass_it() {
        assertEquals(
                200, WindFixture.begun(10, null, null, 200, 200, null, "count").atFullCrankTurns());
        refused(
                "Crank turns at full stretch, not above the target must be 0 to 200, but was 201",
                () -> WindFixture.begun(10, null, null, 200, 201, null, "count"));
        refused(
                "The target in crank turns must be 1 to 10000, but was 0",
                () -> WindFixture.begun(10, null, null, 0, null, null, "count"));
    }

    @Test
    void what_ends_the_wind_is_one_of_three_words() {
        for (StopRule rule : StopRule.values()) {
            String word = rule.name().toLowerCase(Locale.ROOT);
            assertEquals(
                    rule,
                    WindFixture.begun(10, null, null, 200, null, null, word).stopRule());
        }
        refused(
                "What ends the wind must be one of count, torque, breaking, but was 'ceiling'",
                () -> WindFixture.begun(10, null, null, 200, null, null, "ceiling"));
    }

    @Test
    void a_mark_goes_up_or_down_by_one() {
        refused("A mark's step must be 1 or -1, but was 0", () -> new WindMark("m", "w", 0, 5, 5, false, null));
        refused("A mark's step must be 1 or -1, but was 2", () -> new WindMark("m", "w", 2, 5, 5, false, null));
    }

    @Test
    void a_tap_lies_between_the_first_crank_turn_and_a_day_later() {
        assertEquals(0, new WindMark("m", "w", 1, 0, 5, false, null).elapsedMs());
        assertEquals(86_400_000, new WindPhase("p", "w", "stopped", 86_400_000, 5).elapsedMs());
        refused(
                "Milliseconds since the first crank turn must be 0 to 86400000, but was -1",
                () -> new WindMark("m", "w", 1, -1, 5, false, null));
        refused(
                "Milliseconds since the first crank turn must be 0 to 86400000, but was 86400001",
                () -> new WindPhase("p", "w", "stopped", 86_400_001, 5));
    }

    @Test
    void a_phase_is_one_of_seven_words() {
        refused(
                "A phase must be one of stepping-in, stopped, again, backed-off, broke, off-meter, back-on, but was 'halt'",
                () -> new WindPhase("p", "w", "halt", 5, 5));
    }

    @Test
    void turns_at_full_stretch_may_equal_those_at_the_stop_and_not_pass_them() {
        assertEquals(200, new WindCounted("w", 200, 200, null, false).atFullCrankTurns());
        refused(
                "Crank turns at full stretch must not be above those at the last turn, but were 201 and 200",
                () -> new WindCounted("w", 201, 200, null, false));
    }

    @Test
    void no_more_turns_are_taken_off_than_were_put_on() {
        assertEquals(3.5, new WindCounted("w", null, 200, 3.5, false).backOffCrankTurns());
        assertEquals(200.0, new WindCounted("w", null, 200, 200.0, false).backOffCrankTurns());
        refused(
                "Crank turns taken off, not above those at the last turn must be 0 to 200, but was 200.5",
                () -> new WindCounted("w", null, 200, 200.5, false));
    }
}
