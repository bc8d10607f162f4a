package org.skeinday.winding;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.skeinday.motor.BreakTrial;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.StopRule;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

/**
 * What one motor says of breaking. A break is one however the wind was to end, with a reader or without, unless its cause
 * lay outside the rubber: then the motor had stood so many turns. One that broke is never counted as unbroken: where
 * nobody knows at how many turns, the motor says nothing. A break that was taken back is none, whatever its wind still says.
 */
public final class MotorTrials {
    private MotorTrials() {}

    /**
     * Its winds in the order in which they were begun, the last of them is the one that counts.
     *
     * @param broke how it broke; empty while it is whole
     * @param winds of which the turns count
     */
    public static List<BreakTrial> of(MotorAdded motor, Optional<MotorBreak> broke, List<Wind> winds) {
        List<BreakTrial> trials = new ArrayList<>();
        Optional<Wind> brokeIn = broke.filter(MotorBreak::ofTheRubber)
                .flatMap(b -> winds.stream().filter(w -> w.broke().isPresent()).reduce((a, last) -> last));
        for (Wind wind : winds) {
            WindCounted counted = wind.counted();
            if (counted != null && counted.stopCrankTurns() > 0) {
                double turns = wind.turns()
                        .atBreak()
                        .orElse(counted.stopCrankTurns() * wind.begun().ratio());
                boolean parted = brokeIn.filter(wind::equals).isPresent();
                trials.add(trial(
                        motor, turns, parted ? StopRule.BREAKING : wind.begun().stopRule(), parted));
            }
        }
        boolean told = trials.stream().anyMatch(BreakTrial::broke);
        return broke.filter(b -> b.ofTheRubber() && !told)
                .map(b -> brokeUnread(motor, b, trials))
                .orElse(trials);
    }

    private static List<BreakTrial> brokeUnread(MotorAdded motor, MotorBreak broke, List<BreakTrial> before) {
        Double turns = broke.turnsThatCount();
        if (turns == null) {
            return List.of();
        }
        List<BreakTrial> trials = new ArrayList<>(before);
        trials.add(trial(motor, turns, StopRule.BREAKING, true));
        return trials;
    }

    private static BreakTrial trial(MotorAdded motor, double motorTurns, StopRule stop, boolean broke) {
        return BreakTrial.of(
                motor.id(), motorTurns, Length.ofMillimetres(motor.loopMm()), Mass.ofGrams(motor.massG()), stop, broke);
    }
}
