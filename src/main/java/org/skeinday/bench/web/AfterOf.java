package org.skeinday.bench.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Doubts;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.store.WindStore;

/** A wind that is over: its turns, what is doubtful, what it came to. */
final class AfterOf {
    private AfterOf() {}

    static WindingView.After view(Tx tx, Wind done, BesideWinding beside, UnitSystem units, FormErrors form) {
        @Nullable WindCounted counted = done.counted();
        var planned = PlannedCounts.of(tx, done);
        Set<String> confirmed = WindStore.confirmed(tx, done.begun().id());
        List<BenchView.Line> figures = new ArrayList<>();
        done.peakLevel().ifPresent(l -> figures.add(new BenchView.Line("highest torque", beside.needle(done, l))));
        done.launchLevel().ifPresent(l -> figures.add(new BenchView.Line("at launch", beside.needle(done, l))));
        beside.wanted(done).ifPresent(words -> figures.add(new BenchView.Line("against what was wanted", words)));
        done.launchMotorTurns()
                .ifPresent(t -> figures.add(new BenchView.Line("launched with", Math.round(t) + " motor turns")));
        done.breakTorque().ifPresent(t -> figures.add(new BenchView.Line("just before it broke", units.torque(t))));
        done.breakMotorTurns()
                .ifPresent(t -> figures.add(new BenchView.Line("broke at", Math.round(t) + " motor turns")));
        return new WindingView.After(
                form.typedOr("atFull", first(counted == null ? null : counted.atFullCrankTurns(), planned.atFull())),
                form.typedOr("stop", first(counted == null ? null : counted.stopCrankTurns(), planned.stop())),
                form.typedOr("backOff", backOff(done, counted)),
                counted != null,
                Doubts.of(done, beside.band()).stream()
                        .filter(d -> !confirmed.contains(d.markId()))
                        .map(d -> new WindingView.DoubtLine(d.markId(), d.words()))
                        .toList(),
                figures,
                planned.lead(),
                done.broke().isPresent(),
                form);
    }

    private static String backOff(Wind done, @Nullable WindCounted counted) {
        Double said = counted == null ? null : counted.backOffCrankTurns();
        return said == null ? String.valueOf(done.begun().backOffCrankTurns()) : FlightOf.number(said);
    }

    private static String first(@Nullable Integer one, @Nullable Integer other) {
        return one != null ? String.valueOf(one) : other != null ? String.valueOf(other) : "";
    }
}
