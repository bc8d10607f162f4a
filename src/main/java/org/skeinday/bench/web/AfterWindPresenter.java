package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.units.FlightTime;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Doubt;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.MarkDoubts;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.store.WindStore;

/** A wind that is over: its turns, what is doubtful, what it came to. */
final class AfterWindPresenter {
    private AfterWindPresenter() {}

    static WindingView.After view(Tx tx, Wind done, BesideWinding beside, UnitSystem units, FormErrors form) {
        @Nullable WindCounted counted = done.counted();
        var planned = PlannedCounts.of(tx, done);
        Set<String> confirmed = WindStore.confirmed(tx, done.begun().id());
        List<BenchView.Line> figures =
                Apart.made("What this wind came to", () -> figures(done, beside, units), AfterWindPresenter::only);
        List<Doubt> doubts = doubts(done, beside);
        boolean bandConfirmed = isPeakConfirmed(tx, done);
        String atFull = first(counted == null ? null : counted.atFullCrankTurns(), planned.atFull());
        String stop = first(counted == null ? null : counted.stopCrankTurns(), planned.stop());
        String backOff = backOff(tx, done, counted, planned.asPlanned());
        return new WindingView.After(
                form.typedOr("atFull", atFull),
                form.typedOr("stop", stop),
                form.typedOr("backOff", backOff),
                counted != null,
                counted == null && planned.asPlanned(),
                open(doubts, confirmed, bandConfirmed),
                settled(done, doubts, confirmed),
                figures,
                planned.lead(),
                done.broke().isPresent(),
                new WindingView.Held(
                        form.typedOr(
                                "held",
                                done.held().stream().map(HeldRead::typed).collect(Collectors.joining("; "))),
                        form.typedOr("unit", units.torqueUnitTyped()).replace('-', '·'),
                        form.typedOr("unit", units.torqueUnitTyped())),
                counted != null || planned.asPlanned() ? Map.of() : offered(atFull, stop, backOff),
                form);
    }

    /** What the form fills in without anybody having said it. */
    private static Map<String, String> offered(String atFull, String stop, String backOff) {
        Map<String, String> offered = new TreeMap<>(Map.of("atFull", atFull, "stop", stop, "backOff", backOff));
        offered.values().removeIf(String::isEmpty);
        return offered;
    }

    private static List<BenchView.Line> figures(Wind done, BesideWinding beside, UnitSystem units) {
        List<BenchView.Line> figures = new ArrayList<>();
        done.peakLevel().ifPresent(l -> figures.add(new BenchView.Line("highest torque", beside.needle(done, l))));
        done.launchLevel().ifPresent(l -> figures.add(new BenchView.Line("at launch", beside.needle(done, l))));
        beside.wanted(done).ifPresent(words -> figures.add(new BenchView.Line("against what was wanted", words)));
        done.turns()
                .atLaunch()
                .ifPresent(t -> figures.add(new BenchView.Line("launched with", Math.round(t) + " motor turns")));
        done.breakTorque().ifPresent(t -> figures.add(new BenchView.Line("just before it broke", units.torque(t))));
        done.turns()
                .atBreak()
                .ifPresent(t -> figures.add(new BenchView.Line("broke at", Math.round(t) + " motor turns")));
        return figures;
    }

    private static List<BenchView.Line> only(String words) {
        return List.of(new BenchView.Line("figures", words));
    }

    /** What is above the band is confirmed all together in Evening. */
    private static boolean isPeakConfirmed(Tx tx, Wind done) {
        return done.peakTorque()
                .filter(peak -> EvidenceStore.of(tx, done.begun().id())
                        .isConfirmed(Measured.PEAK_TORQUE, peak.newtonMillimetres()))
                .isPresent();
    }

    /** With the band of earlier winds; where that cannot be had, what this wind alone says is asked all the same. */
    private static List<Doubt> doubts(Wind done, BesideWinding beside) {
        return Apart.made(
                "Marks against earlier winds of the batch",
                () -> MarkDoubts.of(done, beside.band()),
                words -> MarkDoubts.of(done, Optional.empty()));
    }

    private static List<WindingView.DoubtLine> open(List<Doubt> doubts, Set<String> confirmed, boolean bandConfirmed) {
        return doubts.stream()
                .filter(d -> !confirmed.contains(d.markId()))
                .filter(d -> d.kind() != Doubt.Kind.ABOVE_BAND || !bandConfirmed)
                .map(d -> new WindingView.DoubtLine(d.markId(), d.words()))
                .toList();
    }

    /** What a person said of single readings; of the hold, what was left out is typed again. */
    private static List<WindingView.DoubtLine> settled(Wind done, List<Doubt> doubts, Set<String> confirmed) {
        Stream<WindingView.DoubtLine> so = doubts.stream()
                .filter(d -> confirmed.contains(d.markId()))
                .map(d -> new WindingView.DoubtLine(d.markId(), d.words() + ". Somebody said that it was so"));
        Stream<WindingView.DoubtLine> out = done.marks().stream()
                .filter(WindMark::leftOut)
                .map(m -> new WindingView.DoubtLine(
                        m.id(),
                        "The tap " + new FlightTime(m.elapsedMs()).text(0) + " after the first turn is left out"));
        return Stream.concat(so, out).toList();
    }

    /** As counted, else as planned with what was taken off besides; where it may have ended otherwise what keys told alone. */
    private static String backOff(Tx tx, Wind done, @Nullable WindCounted counted, boolean asPlanned) {
        Double said = counted == null ? null : counted.backOffCrankTurns();
        String attempt = done.begun().attemptId();
        double besides = attempt == null
                ? 0
                : BreakRecord.turnsOff(tx, attempt, done.begun().motorId());
        boolean tapped = done.phases().stream().anyMatch(p -> p.phase().equals(WindPhase.BACKED_OFF));
        if (said == null && !asPlanned && !tapped) {
            return besides == 0 ? "" : FlightPresenter.number(besides);
        }
        return FlightPresenter.number(said == null ? done.begun().backOffCrankTurns() + besides : said);
    }

    private static String first(@Nullable Integer one, @Nullable Integer other) {
        return one != null ? String.valueOf(one) : other != null ? String.valueOf(other) : "";
    }
}
