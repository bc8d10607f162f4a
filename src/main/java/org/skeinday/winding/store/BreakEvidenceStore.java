package org.skeinday.winding.store;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.motor.BreakEvidence;
import org.skeinday.motor.BreakTest;
import org.skeinday.motor.BreakTrial;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.winding.MotorBreak;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;

/** What the record knows of motors of one batch that broke, and of those that did not. */
public final class BreakEvidenceStore {
    private BreakEvidenceStore() {}

    /** Every motor of the batch that broke, by tag, whatever is known of it; what was taken back is none. */
    public static List<MotorBreak> breaks(Tx tx, String batch) {
        return ofBatch(tx, batch).flatMap(motor -> broken(tx, motor).stream()).toList();
    }

    /** Those with turns and with a torque that was read on this meter: what a ceiling rests on. */
    public static List<BreakTest> tests(Tx tx, String batch, String meter) {
        return breaks(tx, batch).stream()
                .flatMap(b -> b.test().stream())
                .filter(t -> t.meterId().equals(meter))
                .toList();
    }

    /**
     * Every counted wind of the batch as a trial of its strength. What was cranked to a metronome was not counted, and
     * what was typed on the Bench alone does not say what was to stop that wind: neither is among them.
     */
    public static BreakEvidence evidence(Tx tx, String batch) {
        List<BreakTrial> trials = WindStore.countedOfBatch(tx, batch).stream()
                .filter(wind -> wind.counts().isYes())
                .flatMap(wind -> trial(tx, wind).stream())
                .toList();
        return BreakEvidence.of(trials);
    }

    private static Stream<MotorAdded> ofBatch(Tx tx, String batch) {
        return MotorStore.all(tx).stream().filter(m -> m.batchId().equals(batch));
    }

    /** The step says whether it broke; its wind, where there is one, how: readings may be left out afterwards. */
    private static Optional<MotorBreak> broken(Tx tx, MotorAdded motor) {
        return breakOf(tx, motor.id())
                .map(step -> WindStore.ofMotor(tx, motor.id()).stream()
                        .filter(wind -> wind.broke().isPresent() && !wind.paced())
                        .reduce((a, b) -> b)
                        .map(wind -> MotorBreak.of(motor, step, wind))
                        .orElseGet(() -> MotorBreak.of(motor, step)));
    }

    private static Optional<MotorStep> breakOf(Tx tx, String motor) {
        return MotorLifeStore.stepsOf(tx, motor).stream()
                .filter(step -> step.deed().equals(MotorDeed.BREAK.word()))
                .findFirst();
    }

    /** What parted at knot, ring or hook had survived so many turns in its rubber. */
    private static boolean brokeInTheRubber(Tx tx, Wind wind) {
        return wind.broke().isPresent()
                && breakOf(tx, wind.begun().motorId())
                        .filter(step -> !step.saysOfTheRubber())
                        .isEmpty();
    }

    private static Optional<BreakTrial> trial(Tx tx, Wind wind) {
        WindCounted counted = wind.counted();
        String motorId = wind.begun().motorId();
        if (counted == null || counted.stopCrankTurns() == 0) {
            return Optional.empty();
        }
        double reached = wind.breakMotorTurns()
                .orElse(counted.stopCrankTurns() * wind.begun().ratio());
        return MotorStore.find(tx, motorId)
                .map(m -> BreakTrial.of(
                        motorId,
                        reached,
                        Length.ofMillimetres(m.loopMm()),
                        Mass.ofGrams(m.massG()),
                        wind.begun().stopRule(),
                        brokeInTheRubber(tx, wind)));
    }
}
