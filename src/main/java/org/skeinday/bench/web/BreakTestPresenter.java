package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.bench.action.WindAlone;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.StationStore;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.BreakTest;
import org.skeinday.motor.BreakTests;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.MotorBreak;
import org.skeinday.winding.store.BreakEvidenceStore;

/** What a batch's break test has found, and which motor could be next. */
final class BreakTestPresenter {
    private final Tx tx;
    private final BatchAdded batch;
    private final UnitSystem units;
    private final MotorUses uses;
    private final List<MotorBreak> breaks;

    private BreakTestPresenter(Tx tx, BatchAdded batch, UnitSystem units) {
        this.tx = tx;
        this.batch = batch;
        this.units = units;
        this.uses = MotorUseStore.all(tx);
        this.breaks = BreakEvidenceStore.breaks(tx, batch.id());
    }

    /** @param needed motor ids that attempts to come need */
    static Optional<BreakTestView> view(Tx tx, String batch, UnitSystem units, List<String> needed, boolean captain) {
        return BatchStore.find(tx, batch).map(b -> new BreakTestPresenter(tx, b, units).view(needed, captain));
    }

    private BreakTestView view(List<String> needed, boolean captain) {
        List<MotorLife> whole = MotorLifeStore.all(tx).stream()
                .filter(life -> life.motor().batchId().equals(batch.id()) && life.stage() != MotorStage.BROKEN)
                .sorted(bestFirst(needed))
                .toList();
        List<BreakTestView.Candidate> next = new ArrayList<>();
        List<BenchView.Line> not = new ArrayList<>();
        for (MotorLife life : whole) {
            WindAlone.whyNot(tx, life)
                    .ifPresentOrElse(
                            no -> not.add(new BenchView.Line(life.motor().tag(), no)),
                            () -> next.add(candidate(life, needed)));
        }
        int counted = (int) breaks.stream().filter(b -> b.k().isPresent()).count();
        return new BreakTestView(
                batch.id(),
                batch.name(),
                found(),
                known(),
                BreakTests.toGo(counted),
                next,
                not,
                captain,
                List.of(),
                "");
    }

    /** Retired ones first, since nobody misses them; those that attempts need last. */
    private Comparator<MotorLife> bestFirst(List<String> needed) {
        return Comparator.comparing(
                        (MotorLife life) -> needed.contains(life.motor().id()))
                .thenComparing(life -> life.stage() != MotorStage.RETIRED)
                .thenComparing(life -> -uses.of(life.motor().id()))
                .thenComparing(life -> life.motor().tag());
    }

    private BreakTestView.Candidate candidate(MotorLife life, List<String> needed) {
        String used = ", " + MotorUses.words(uses.of(life.motor().id()));
        String needs = needed.contains(life.motor().id()) ? ", needed by an attempt" : "";
        return new BreakTestView.Candidate(
                life.motor().id(), life.motor().tag(), life.stage().word() + used + needs);
    }

    private List<BreakTestView.Found> found() {
        return breaks.stream()
                .map(b -> new BreakTestView.Found(
                        b.motor().id(),
                        b.motor().tag(),
                        b.motorTurns() == null ? "–" : String.valueOf(Math.round(b.motorTurns())),
                        b.k().map(BreakTestPresenter::k).orElse("–"),
                        b.torque() == null ? "–" : units.torque(b.torque()),
                        b.meter() == null || b.torque() == null ? "–" : b.meter(),
                        BreakWords.kind(b)
                                + (b.asked().words().isEmpty()
                                        ? ""
                                        : "; " + b.asked().words())))
                .toList();
    }

    private List<BenchView.Line> known() {
        double[] ks = breaks.stream()
                .flatMap(b -> b.k().stream())
                .mapToDouble(Double::doubleValue)
                .toArray();
        List<BenchView.Line> lines = new ArrayList<>();
        lines.add(new BenchView.Line("K", BreakTests.k(ks)));
        @Nullable Double held = batch.kInchGram();
        lines.add(new BenchView.Line("K that plans use", held == null ? "none yet" : k(held)));
        lines.addAll(torque());
        lines.add(new BenchView.Line(
                "break risk",
                switch (BreakEvidenceStore.evidence(tx, batch.id())
                        .at(held == null ? 40 : held)
                        .kind()) {
                    case ESTIMATED -> "can be told: it stands beside the plans";
                    case NOT_KNOWN -> "too few breaks to tell";
                }));
        return lines;
    }

    /** Of each meter of its own: two meters never read the same. */
    private List<BenchView.Line> torque() {
        List<String> meters = StationStore.all(tx).stream()
                .map(StationAdded::meter)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        return meters.isEmpty()
                ? List.of(new BenchView.Line("torque at break", "no meter is entered in Prepare, page Winding places"))
                : meters.stream().map(this::torque).toList();
    }

    private BenchView.Line torque(String meter) {
        List<BreakTest> tests = BreakEvidenceStore.tests(tx, batch.id(), meter);
        String words = BreakTests.medianTorque(tests)
                .map(t -> units.torque(t) + BreakTests.from(tests.size()))
                .orElse("none read yet: torque limit not known");
        return new BenchView.Line("torque at break on " + meter, words);
    }

    private static String k(double k) {
        return String.format(Locale.ROOT, "%.1f", k);
    }
}
