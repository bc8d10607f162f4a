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
 * @param asked what is still asked about its numbers
 */
public record MotorBreak(
        MotorAdded motor,
        @Nullable Double motorTurns,
        @Nullable Torque torque,
        @Nullable String meter,
        boolean ofTheRubber,
        boolean test,
        Asked asked) {
    /** What keeps turns and torque out of every fit, in words; empty where nothing does. @param read whether of a wind */
    public record Asked(String turns, String torque, boolean read) {
        public static final Asked NOTHING = new Asked("", "", false);

        /** Both in one, empty when nothing is asked. */
        public String words() {
            return turns.isEmpty() || torque.isEmpty() || turns.equals(torque)
                    ? turns.isEmpty() ? torque : turns
                    : turns + "; " + torque;
        }
    }

    public MotorBreak {
        if (motorTurns != null) {
            Preconditions.above("Motor turns at the break", motorTurns, 0);
        }
    }

    /** Of which nothing is asked. */
    public MotorBreak(
            MotorAdded motor,
            @Nullable Double motorTurns,
            @Nullable Torque torque,
            @Nullable String meter,
            boolean ofTheRubber,
            boolean test) {
        this(motor, motorTurns, torque, meter, ofTheRubber, test, Asked.NOTHING);
    }

    /** Whether its numbers are of a wind that was read. */
    public boolean read() {
        return asked.read();
    }

    /** The same with what is still asked about its numbers. */
    public MotorBreak asking(Asked of) {
        return new MotorBreak(motor, motorTurns, torque, meter, ofTheRubber, test, of);
    }

    /** Motor turns that may enter a fit; null where nobody counted them and while they are asked about. */
    public @Nullable Double turnsThatCount() {
        return asked.turns().isEmpty() ? motorTurns : null;
    }

    /** As it was read and counted in its wind. @param step that says that it broke */
    public static MotorBreak of(MotorAdded motor, MotorStep step, Wind wind) {
        return new MotorBreak(
                motor,
                wind.paced() ? null : wind.turns().atBreak().orElse(null),
                wind.breakTorque().orElse(null),
                wind.begun().meter(),
                step.saysOfTheRubber(),
                step.test() == null ? untilItBroke(step, wind) : step.test());
    }

    /** Where nobody has said what it was: at a knot it parts before the rubber has shown what it stands. */
    private static boolean untilItBroke(MotorStep step, Wind wind) {
        return wind.begun().stopRule() == StopRule.BREAKING && !step.wasSeenOutsideTheRubber();
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
     * K of N_b = K · L0^1.5 / m^0.5 from this motor, inches and grams; empty while its turns are not known or asked about, and where it was
     * no test of the rubber.
     */
    public Optional<Double> k() {
        return Optional.ofNullable(turnsThatCount())
                .filter(turns -> counts())
                .map(turns -> BreakingTurns.k(turns, loop(), mass()));
    }

    /** Empty while turns, torque or meter are not known or asked about, and where it was no test of the rubber. */
    public Optional<BreakTest> asTest() {
        Double turns = turnsThatCount();
        return !counts()
                        || meter == null
                        || torque == null
                        || turns == null
                        || !asked.torque().isEmpty()
                ? Optional.empty()
                : Optional.of(new BreakTest(meter, loop(), mass(), turns, torque));
    }

    public Length loop() {
        return Length.ofMillimetres(motor.loopMm());
    }

    public Mass mass() {
        return Mass.ofGrams(motor.massG());
    }
}
