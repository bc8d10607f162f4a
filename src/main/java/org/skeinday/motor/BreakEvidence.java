package org.skeinday.motor;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.units.Preconditions;

/**
 * The winds of one batch as evidence of breaking. Fitted are break tests and winds whose stop set beforehand was a
 * count, one row per motor (the last of them, or its break). Winds to be stopped on torque are counted and shown, never
 * fitted.
 */
public final class BreakEvidence {
    /** Breaks below which nothing is said. */
    public static final int FEWEST_BREAKS = 3;

    private final BreakRisk.Basis basis;
    private final Optional<WeibullFit> fit;

    private BreakEvidence(BreakRisk.Basis basis, Optional<WeibullFit> fit) {
        this.basis = basis;
        this.fit = fit;
    }

    /** @param trials in the order in which they were wound */
    public static BreakEvidence of(List<BreakTrial> trials) {
        Map<String, BreakTrial> last = new LinkedHashMap<>();
        trials.stream()
                .filter(t -> t.stopRule().admitsToFit())
                .forEach(t -> last.merge(t.motorId(), t, (before, later) -> before.broke() ? before : later));
        int torqueStopped =
                (int) trials.stream().filter(t -> !t.stopRule().admitsToFit()).count();
        int breaks = (int) last.values().stream().filter(BreakTrial::broke).count();
        var basis = new BreakRisk.Basis(last.size(), breaks, torqueStopped);
        return new BreakEvidence(
                basis, breaks < FEWEST_BREAKS ? Optional.empty() : fitted(new ArrayList<>(last.values())));
    }

    /** Fitted once: the risk is asked for beside every fraction of breaking turns. */
    private static Optional<WeibullFit> fitted(List<BreakTrial> trials) {
        double[] turns =
                trials.stream().mapToDouble(BreakTrial::normalisedTurns).toArray();
        boolean[] broke = new boolean[turns.length];
        for (int i = 0; i < broke.length; i++) {
            broke[i] = trials.get(i).broke();
        }
        return WeibullFit.hasMaximum(turns, broke) ? Optional.of(WeibullFit.of(turns, broke)) : Optional.empty();
    }

    public BreakRisk.Basis basis() {
        return basis;
    }

    /** @param normalisedTurns above zero, in K's unit */
    public BreakRisk at(double normalisedTurns) {
        Preconditions.positive("Normalised turns", normalisedTurns);
        if (basis.breaks() < FEWEST_BREAKS) {
            return new BreakRisk.NotKnown("too few breaks to tell", basis);
        }
        return fit.<BreakRisk>map(f -> new BreakRisk.Estimated(
                        f.probability(normalisedTurns),
                        f.calibratedInterval(normalisedTurns),
                        f.probabilityInterval(normalisedTurns, WeibullFit.CONFIDENCE),
                        f.shape(),
                        f.scale(),
                        basis))
                .orElseGet(() -> new BreakRisk.NotKnown(
                        "all broke at the same turns, beyond all others: no spread to fit", basis));
    }
}
