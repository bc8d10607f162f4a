package org.skeinday.bench.action;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.motor.BatchBand;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.units.Torque;
import org.skeinday.winding.BatchWinds;
import org.skeinday.winding.Doubt;
import org.skeinday.winding.MarkDoubts;
import org.skeinday.winding.Wind;
import org.skeinday.winding.store.WindStore;

/**
 * That a wind is asked about since its marks were above the band of the batch's other winds, as these stood then: it is
 * written down with its highest torque, since winds that were held against each other again and again would answer
 * differently with every new one.
 */
final class AboveBand {
    private AboveBand() {}

    /** What changes of it; nothing where nobody read a torque. @param so marks that are confirmed by this act */
    static List<Fact> marks(Tx tx, ActContext context, Wind wind, Set<String> so) {
        Double peak = wind.peakTorque().map(Torque::newtonMillimetres).orElse(null);
        if (peak == null) {
            return List.of();
        }
        ValueMarks said = EvidenceStore.of(tx, wind.begun().id());
        Set<String> confirmed =
                new HashSet<>(WindStore.confirmed(tx, wind.begun().id()));
        confirmed.addAll(so);
        boolean known = said.isConfirmed(Measured.PEAK_TORQUE, peak);
        boolean asked = !known
                && MarkDoubts.of(wind, band(tx, wind)).stream()
                        .anyMatch(d -> d.kind() == Doubt.Kind.ABOVE_BAND && !confirmed.contains(d.markId()));
        if (asked == said.isAsked(Measured.PEAK_TORQUE, peak)) {
            return List.of();
        }
        return List.of(said(context, wind, peak, asked, !asked && !so.isEmpty()));
    }

    /** The word that this mark was so is taken back: where it lies above the band, the wind is asked about again. */
    static List<Fact> askedAgain(Tx tx, ActContext context, Wind wind, String mark) {
        return wind.peakTorque().stream()
                .filter(peak -> MarkDoubts.of(wind, band(tx, wind)).stream()
                        .anyMatch(d ->
                                d.kind() == Doubt.Kind.ABOVE_BAND && d.markId().equals(mark)))
                .map(peak -> said(context, wind, peak.newtonMillimetres(), true, false))
                .toList();
    }

    private static Fact said(ActContext context, Wind wind, double peak, boolean asked, boolean person) {
        return Fact.of(
                "flight.marked",
                new ValueMarked(
                        wind.begun().id(),
                        Measured.PEAK_TORQUE.word(),
                        peak,
                        Source.TAP.word(),
                        person,
                        person ? context.personOrNull() : null,
                        context.now().toEpochMilli(),
                        asked ? Boolean.TRUE : null));
    }

    private static Optional<DoubleFunction<Optional<BatchBand.Band>>> band(Tx tx, Wind wind) {
        return MotorStore.find(tx, wind.begun().motorId()).flatMap(motor -> {
            Map<String, BatchWinds.Size> sizes = MotorStore.all(tx).stream()
                    .filter(m -> m.batchId().equals(motor.batchId()))
                    .collect(Collectors.toMap(MotorAdded::id, BatchWinds.Size::of));
            return BatchWinds.before(wind, WindStore.evidenceOfBatch(tx, motor.batchId()), sizes)
                    .winding(BatchWinds.Size.of(motor));
        });
    }
}
