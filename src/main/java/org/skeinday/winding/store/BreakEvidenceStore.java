package org.skeinday.winding.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.motor.BreakEvidence;
import org.skeinday.motor.BreakTest;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Torque;
import org.skeinday.winding.MotorBreak;
import org.skeinday.winding.MotorTrials;
import org.skeinday.winding.Wind;

/** What the record knows of motors of one batch that broke, and of those that did not. */
public final class BreakEvidenceStore {
    private BreakEvidenceStore() {}

    /** Every motor of the batch that broke, by tag, whatever is known of it; what was taken back is none. */
    public static List<MotorBreak> breaks(Tx tx, String batch) {
        return breaks(tx, batch, new WindWorth(tx));
    }

    /** The same where what winds are worth is read already. */
    public static List<MotorBreak> breaks(Tx tx, String batch, WindWorth worth) {
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
        return evidence(breaks(tx, batch, worth), motors(tx, batch), WindStore.countedOfBatch(tx, batch), worth);
    }

    /** The motors of a batch, by tag. */
    public static List<MotorAdded> motors(Tx tx, String batch) {
        return ofBatch(tx, batch).toList();
    }

    /** The same of what is read already. @param breaks of the batch @param counted its winds whose turns were counted */
    public static BreakEvidence evidence(
            List<MotorBreak> breaks, List<MotorAdded> motors, List<Wind> counted, WindWorth worth) {
        Map<String, MotorBreak> broke =
                breaks.stream().collect(Collectors.toMap(one -> one.motor().id(), one -> one));
        Map<String, List<Wind>> winds = counted.stream()
                .filter(wind -> worth.turns(wind).isYes())
                .collect(Collectors.groupingBy(wind -> wind.begun().motorId()));
        return BreakEvidence.of(motors.stream()
                .flatMap(motor -> MotorTrials.of(
                        motor, Optional.ofNullable(broke.get(motor.id())), winds.getOrDefault(motor.id(), List.of()))
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

    /**
     * Breaks as files have them, which have no winds.
     *
     * @param steps the break of every motor that is broken, with the word of its wind that it was a test
     * @param marks what was said of all numbers of the record, and of what is asked about winds that broke
     */
    public record Told(List<MotorStep> steps, List<ValueMarked> marks) {}

    /** As many queries for many breaks as for one. @param all motors of the record */
    public static Told told(Tx tx, List<MotorAdded> all, WindWorth worth) {
        List<MotorStep> broke = MotorLifeStore.breaks(tx);
        Map<String, MotorAdded> motors = all.stream().collect(Collectors.toMap(MotorAdded::id, m -> m));
        Map<String, Wind> winds = broke.isEmpty()
                ? Map.of()
                : WindStore.brokenBy(tx, broke.stream().map(MotorStep::motorId).toList());
        List<MotorStep> steps = new ArrayList<>();
        List<ValueMarked> marks = new ArrayList<>(worth.marks());
        for (MotorStep step : broke) {
            MotorAdded motor = motors.get(step.motorId());
            Wind wind = winds.get(step.motorId());
            MotorBreak read = motor == null || wind == null ? null : MotorBreak.of(motor, step, wind);
            MotorStep told = read == null ? step : asRead(step, read);
            steps.add(read != null && step.test() == null && read.test() ? told.asTest() : told);
            if (wind != null) {
                marks.addAll(AskedOfBreak.of(told, worth.asked(wind), worth.confirmedCount(wind)));
            }
        }
        return new Told(List.copyOf(steps), List.copyOf(marks));
    }

    /** What was left out of its wind afterwards, or was never counted, is none of its numbers. */
    private static MotorStep asRead(MotorStep step, MotorBreak read) {
        Torque torque = read.torque();
        Double nmm = torque == null ? null : (Double) torque.newtonMillimetres();
        boolean same = Objects.equals(nmm, step.torqueNmm()) && Objects.equals(read.motorTurns(), step.motorTurns());
        return same
                ? step
                : step.brokeAt(
                        read.motorTurns(),
                        nmm,
                        Objects.equals(nmm, step.torqueNmm()) ? step.torqueTyped() : null,
                        read.meter());
    }

    /** The same where what winds are worth is read already. */
    public static Optional<MotorBreak> of(Tx tx, MotorAdded motor, WindWorth worth) {
        return broken(tx, motor, worth);
    }

    /** The step says whether it broke; its wind, where there is one, how: readings may be left out afterwards. */
    private static Optional<MotorBreak> broken(Tx tx, MotorAdded motor, WindWorth worth) {
        return MotorLifeStore.breakOf(tx, motor.id())
                .map(step -> Optional.ofNullable(
                                WindStore.brokenBy(tx, List.of(motor.id())).get(motor.id()))
                        .map(wind -> MotorBreak.of(motor, step, wind).asking(worth.asked(wind)))
                        .orElseGet(() -> MotorBreak.of(motor, step).asking(worth.asked(step))));
    }
}
