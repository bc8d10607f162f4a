package org.skeinday.winding;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BreakTest;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorStep;
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
 * @param ofTheRubber false where it parted at knot, ring or hook: then it says nothing of the rubber
 */
public record MotorBreak(
        MotorAdded motor,
        @Nullable Double motorTurns,
        @Nullable Torque torque,
        @Nullable String meter,
        boolean ofTheRubber) {
    public MotorBreak {
        if (motorTurns != null) {
            Preconditions.above("Motor turns at the break", motorTurns, 0);
        }
    }

    /** As it was read and counted in its wind. @param step that says that it broke */
    public static MotorBreak of(MotorAdded motor, MotorStep step, Wind wind) {
        return new MotorBreak(
                motor,
                wind.breakMotorTurns().orElse(null),
                wind.breakTorque().orElse(null),
                wind.begun().meter(),
                step.saysOfTheRubber());
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
                step.saysOfTheRubber());
    }

    /**
     * K of N_b = K · L0^1.5 / m^0.5 from this motor, inches and grams; empty while its turns are not known, or where it did
     * not part in the rubber.
     */
    public Optional<Double> k() {
        return Optional.ofNullable(motorTurns)
                .filter(turns -> ofTheRubber)
                .map(turns -> BreakingTurns.k(turns, loop(), mass()));
    }

    /** Empty while turns, torque or meter are not known, or where it did not part in the rubber. */
    public Optional<BreakTest> test() {
        return !ofTheRubber || meter == null || torque == null || motorTurns == null
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
