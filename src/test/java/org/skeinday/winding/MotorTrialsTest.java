package org.skeinday.winding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.skeinday.motor.BreakTrial;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.Ceiling;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.Section;
import org.skeinday.motor.StopRule;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

/** What one motor says of breaking: of 2200 breaking turns, at ratio 10. */
class MotorTrialsTest {
    private static final MotorAdded MOTOR =
            new MotorAdded("m", "A3", "b", "Reed", "cw", 450, "450 mm", 1.5, "1.5 g", null, 0);

    private final List<Wind> winds = new ArrayList<>();

    private void wind(String stop, int turns, boolean broke) {
        String id = "w" + winds.size();
        var begun = new WindBegun(
                id,
                null,
                "m",
                null,
                "wire 1",
                10,
                0.35,
                7.0,
                null,
                null,
                0,
                null,
                stop,
                1,
                "d",
                null,
                1_000L * winds.size(),
                false);
        List<WindPhase> phases =
                broke ? List.of(new WindPhase(id + "p", id, WindPhase.BROKE, 30_000, 31_000)) : List.of();
        winds.add(Wind.of(begun, phases, List.of(), new WindCounted(id, null, turns, null, false)));
    }

    private static MotorBreak broke(@Nullable Double turns, boolean ofTheRubber, boolean test) {
        return new MotorBreak(MOTOR, turns, Torque.ofNewtonMillimetres(2.8), "wire 1", ofTheRubber, test);
    }

    private List<BreakTrial> trials(@Nullable MotorBreak broke) {
        return MotorTrials.of(MOTOR, Optional.ofNullable(broke), winds);
    }

    private static double normalised(double turns) {
        return BreakingTurns.k(turns, Length.ofMillimetres(450), Mass.ofGrams(1.5));
    }

    @Test
    void an_accident_counts_as_a_break_whatever_was_to_end_the_wind() {
        wind("torque", 91, true);
        assertEquals(
                List.of(new BreakTrial("m", normalised(910), StopRule.BREAKING, true)),
                trials(broke(910.0, true, false)));
    }

    @Test
    void a_cause_outside_the_rubber_leaves_a_motor_that_stood_so_many_turns() {
        wind("count", 150, true);
        assertEquals(
                List.of(new BreakTrial("m", normalised(1500), StopRule.COUNT, false)),
                trials(broke(1500.0, false, false)));
    }

    @Test
    void a_break_that_was_taken_back_is_none_whatever_its_wind_still_says() {
        wind("count", 150, true);
        assertEquals(List.of(new BreakTrial("m", normalised(1500), StopRule.COUNT, false)), trials(null));
        wind("count", 190, true);
        assertEquals(
                List.of(
                        new BreakTrial("m", normalised(1500), StopRule.COUNT, false),
                        new BreakTrial("m", normalised(1900), StopRule.BREAKING, true)),
                trials(broke(1900.0, true, false)),
                "it breaks once");
    }

    @Test
    void a_motor_that_broke_without_a_reader_is_not_the_unbroken_one_of_its_last_wind() {
        wind("count", 180, false);
        assertEquals(1, trials(null).size(), "whole so far");
        assertEquals(
                new BreakTrial("m", normalised(1900), StopRule.BREAKING, true),
                trials(broke(1900.0, true, false)).get(1));
        assertEquals(List.of(), trials(broke(null, true, false)), "at turns that nobody knows: it says nothing");
    }

    @Test
    void only_a_break_test_tells_k_and_a_ceiling() {
        assertTrue(broke(910.0, true, false).k().isEmpty());
        assertTrue(broke(910.0, true, false).asTest().isEmpty());
        assertTrue(broke(910.0, false, true).asTest().isEmpty(), "at the knot");
        assertEquals(normalised(2200), broke(2200.0, true, true).k().orElseThrow(), 1e-9);
        Section section = Section.of(Mass.ofGrams(1.5), Length.ofMillimetres(450));
        var none = Ceiling.fromBreakTests(
                broke(910.0, true, false).asTest().stream().toList(), "wire 1", section, 0.85);
        assertEquals(Ceiling.Kind.NOT_KNOWN, none.kind());
        var one = (Ceiling.FromBreakTests) Ceiling.fromBreakTests(
                broke(2200.0, true, true).asTest().stream().toList(), "wire 1", section, 0.85);
        assertEquals(0.85 * 2.8, one.torque().newtonMillimetres(), 1e-9);
    }
}
