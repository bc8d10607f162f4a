package org.skeinday.attempt.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.StationStore;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.BreakEvidence;
import org.skeinday.motor.BreakRisk;
import org.skeinday.motor.BreakTest;
import org.skeinday.motor.BreakTests;
import org.skeinday.motor.HoldBleed;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.BatchWinds;
import org.skeinday.winding.MotorBreak;
import org.skeinday.winding.Wind;
import org.skeinday.winding.store.BreakEvidenceStore;
import org.skeinday.winding.store.WindStore;
import org.skeinday.winding.store.WindWorth;

/** What the record makes of one batch as pages show it: K, torques at break, the risk, the bleed of a hold. */
final class BatchFigures {
    /** Where plans have no K yet the risk is told at a usual one. */
    private static final double USUAL_K = 40;

    private BatchFigures() {}

    /** Each figure by what it is of, in words that begin a sentence. */
    static Map<String, String> of(Tx tx, BatchAdded batch, UnitSystem units) {
        String of = " of batch " + batch.name();
        Map<String, String> lines = new LinkedHashMap<>();
        var worth = new WindWorth(tx);
        List<MotorBreak> breaks = BreakEvidenceStore.breaks(tx, batch.id(), worth);
        List<MotorAdded> motors = BreakEvidenceStore.motors(tx, batch.id());
        List<Wind> counted = WindStore.countedOfBatch(tx, batch.id());
        lines.put(
                "K" + of,
                BreakTests.k(breaks.stream()
                        .flatMap(broke -> broke.k().stream())
                        .mapToDouble(Double::doubleValue)
                        .toArray()));
        StationStore.all(tx).stream()
                .map(StationAdded::meter)
                .filter(Objects::nonNull)
                .distinct()
                .forEach(meter -> lines.put(
                        "Torque at break" + of + " on " + meter, torque(breaks, String.valueOf(meter), units)));
        lines.put("Risk of breaking" + of, risk(batch, BreakEvidenceStore.evidence(breaks, motors, counted, worth)));
        lines.put(
                "Bleed of a hold" + of,
                bleed(
                        motors,
                        counted.stream()
                                .filter(wind -> worth.readings(wind).isYes())
                                .toList()));
        return lines;
    }

    private static String torque(List<MotorBreak> breaks, String meter, UnitSystem units) {
        List<BreakTest> tests = breaks.stream()
                .flatMap(broke -> broke.asTest().stream())
                .filter(test -> test.meterId().equals(meter))
                .toList();
        return BreakTests.medianTorque(tests)
                .map(median -> units.torque(median) + BreakTests.from(tests.size()))
                .orElse("not known");
    }

    private static String risk(BatchAdded batch, BreakEvidence evidence) {
        double at = Optional.ofNullable(batch.kInchGram()).orElse(USUAL_K);
        BreakRisk risk = evidence.at(at);
        return risk instanceof BreakRisk.Estimated known
                ? PlanForecast.percent(known.probability()) + " at K = " + String.format(Locale.ROOT, "%.1f", at) + " ("
                        + known.basis().breaks() + " of " + known.basis().motors() + " motors broke)"
                : "not known";
    }

    private static String bleed(List<MotorAdded> motors, List<Wind> winds) {
        Map<String, BatchWinds.Size> sizes =
                motors.stream().collect(Collectors.toMap(MotorAdded::id, BatchWinds.Size::of));
        HoldBleed bleed = new BatchWinds(winds, sizes).bleed();
        return bleed.isKnown()
                ? String.format(
                        Locale.ROOT,
                        "%.1f %% for each tenfold time (%d holds)",
                        100 * bleed.k(),
                        bleed.holds().size())
                : "not known (" + bleed.holds().size() + " of " + HoldBleed.FEWEST_HOLDS + " holds)";
    }
}
