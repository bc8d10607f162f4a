package org.skeinday.winding;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BreakTest;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.StopRule;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;

/**
 * A motor that broke, with what is known of it.
 *
 * @param motorTurns in it, above 0; null when nobody counted
 * @param torque just before; null when nobody read it
 * @param meter that showed {@code torque}; null when it is not known
 * @param ofTheRubber false where it parted at knot, ring or hook or was dropped: then it says nothing of the rubber
 * @param test whether it was wound until it broke, or the coach said that it was a break test: an accident tells neither K
 *     nor a ceiling
 */
public record MotorBreak(
        MotorAdded motor,
        @Nullable Double motorTurns,
        @Nullable Torque torque,
        @Nullable String meter,
        boolean ofTheRubber,
        boolean test) {
    public MotorBreak {
        if (motorTurns != null) {
            Preconditions.above("Motor turns at the break", motorTurns, 0);
        }
    }

    /** As it was read and counted in its wind. @param step that says that it broke */
    public static MotorBreak of(MotorAdded motor, MotorStep step, Wind wind) {
        return new MotorBreak(
                motor,
                wind.paced() ? null : wind.breakMotorTurns().orElse(null),
                wind.breakTorque().orElse(null),
                wind.begun().meter(),
                step.saysOfTheRubber(),
                step.test() == null ? wind.begun().stopRule() == StopRule.BREAKING : step.test());
    }

    /** As it was typed on the Bench. */
    public static MotorBreak of(MotorAdded motor, MotorStep step) {
        @Nullable Double torque = step.torqueNmm();
        @Nullable Double turns = step.motorTurns();
        return new MotorBreak(
                motor,
                turns == null || turns <= 0 ? null : turns,
                torque == null || torque <= 0 ? null : Torque.ofNewtonMillimetres(torque),
                step.meter(),
                step.saysOfTheRubber(),
                Boolean.TRUE.equals(step.test()));
    }

    /** Whether it tells what the batch stands: a test, and of the rubber. */
    public boolean counts() {
        return test && ofTheRubber;
    }

    /**
     * K of N_b = K · L0^1.5 / m^0.5 from this motor, inches and grams; empty while its turns are not known, and where it was
     * no test of the rubber.
     */
    public Optional<Double> k() {
        return Optional.ofNullable(motorTurns)
                .filter(turns -> counts())
                .map(turns -> BreakingTurns.k(turns, loop(), mass()));
    }

    /** Empty while turns, torque or meter are not known, and where it was no test of the rubber. */
    public Optional<BreakTest> asTest() {
        return !counts() || meter == null || torque == null || motorTurns == null
                ? Optional.empty()
                : Optional.of(new BreakTest(meter, loop(), mass(), motorTurns, torque));
    }

    public Length loop() {
        return Length.ofMillimetres(motor.loopMm());
    }

    public Mass mass() {
        return Mass.ofGrams(motor.massG());
    }
}
