package org.skeinday.winding.store;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.skeinday.motor.BreakEvidence;
import org.skeinday.motor.BreakTest;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.MotorBreak;
import org.skeinday.winding.MotorTrials;
import org.skeinday.winding.Wind;

/** What the record knows of motors of one batch that broke, and of those that did not. */
public final class BreakEvidenceStore {
    private BreakEvidenceStore() {}

    /** Every motor of the batch that broke, by tag, whatever is known of it; what was taken back is none. */
    public static List<MotorBreak> breaks(Tx tx, String batch) {
        var worth = new WindWorth(tx);
        return ofBatch(tx, batch)
                .flatMap(motor -> broken(tx, motor, worth).stream())
                .toList();
    }

    /** Those with turns and with a torque that was read on this meter: what a ceiling rests on. */
    public static List<BreakTest> tests(Tx tx, String batch, String meter) {
        return breaks(tx, batch).stream()
                .flatMap(b -> b.asTest().stream())
                .filter(t -> t.meterId().equals(meter))
                .toList();
    }

    /**
     * What every motor of the batch says of breaking, see {@link MotorTrials}. What was cranked to a metronome was not
     * counted, and neither that nor a count that is asked about is among them.
     */
    public static BreakEvidence evidence(Tx tx, String batch) {
        var worth = new WindWorth(tx);
        Map<String, List<Wind>> winds = WindStore.countedOfBatch(tx, batch).stream()
                .filter(wind -> worth.turns(wind).isYes())
                .collect(Collectors.groupingBy(wind -> wind.begun().motorId()));
        return BreakEvidence.of(ofBatch(tx, batch)
                .flatMap(motor ->
                        MotorTrials.of(motor, broken(tx, motor, worth), winds.getOrDefault(motor.id(), List.of()))
                                .stream())
                .toList());
    }

    private static Stream<MotorAdded> ofBatch(Tx tx, String batch) {
        return MotorStore.all(tx).stream().filter(m -> m.batchId().equals(batch));
    }

    /** How this motor broke; empty while it is whole. */
    public static Optional<MotorBreak> of(Tx tx, MotorAdded motor) {
        return broken(tx, motor, new WindWorth(tx));
    }

    /** The break of every motor that is broken, with the word of its wind that it was a test: files have no winds. */
    public static List<MotorStep> steps(Tx tx) {
        var worth = new WindWorth(tx);
        return MotorLifeStore.breaks(tx).stream()
                .map(step -> step.test() == null && isTest(tx, step, worth) ? step.asTest() : step)
                .toList();
    }

    private static boolean isTest(Tx tx, MotorStep step, WindWorth worth) {
        return MotorStore.find(tx, step.motorId())
                .flatMap(motor -> broken(tx, motor, worth))
                .filter(MotorBreak::test)
                .isPresent();
    }

    /** The same where what winds are worth is read already. */
    public static Optional<MotorBreak> of(Tx tx, MotorAdded motor, WindWorth worth) {
        return broken(tx, motor, worth);
    }

    /** The step says whether it broke; its wind, where there is one, how: readings may be left out afterwards. */
    private static Optional<MotorBreak> broken(Tx tx, MotorAdded motor, WindWorth worth) {
        return MotorLifeStore.breakOf(tx, motor.id())
                .map(step -> WindStore.ofMotor(tx, motor.id()).stream()
                        .filter(wind -> wind.broke().isPresent())
                        .reduce((a, b) -> b)
                        .map(wind -> MotorBreak.of(motor, step, wind).asking(worth.asked(wind)))
                        .orElseGet(() -> MotorBreak.of(motor, step).asking(worth.asked(step))));
    }
}
