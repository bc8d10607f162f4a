package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.action.WindingGate;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.steps.Gate;
import org.skeinday.steps.GatePassed;
import org.skeinday.steps.action.GateAsked;
import org.skeinday.steps.store.RunStore;
import org.skeinday.steps.web.GateView;

/** That winding may start, or started, although something was open: who answered for it, and why. */
final class GateWords {
    private GateWords() {}

    /** What winding waits for; where its place cannot be read it is not said to be open. */
    static GateView waits(Tx tx, AttemptNow attempt) {
        return Apart.made(
                "What winding waits for",
                () -> GateView.of(WindingGate.of(tx, attempt)),
                words -> new GateView(words, false));
    }

    /**
     * What is answered for in the wind at hand: as it stood when that was begun, before it as it stands now.
     *
     * @param nameOf display name of a person's id
     */
    static List<NowView.Line> passes(Tx tx, AttemptNow attempt, UnaryOperator<String> nameOf) {
        return inForce(tx, attempt).stream()
                .map(a -> new NowView.Line("answered for by", words(a.pass(), a.open(), nameOf)))
                .toList();
    }

    /** Answers that do not hold for the wind at hand any more: what they were for was asked again or ticked since. */
    static List<NowView.Line> earlier(Tx tx, AttemptNow attempt, UnaryOperator<String> nameOf, ZoneId zone) {
        List<GatePassed> held =
                inForce(tx, attempt).stream().map(Gate.Answered::pass).toList();
        return RunStore.passes(tx, attempt.id()).stream()
                .filter(pass -> !held.contains(pass))
                .map(pass -> new NowView.Line(
                        "answered for before, " + PageWords.second(pass.atMs(), zone),
                        words(pass, pass.steps().size(), nameOf) + ", asked again or checked since"))
                .toList();
    }

    private static List<Gate.Answered> inForce(Tx tx, AttemptNow attempt) {
        List<GatePassed> passes = RunStore.passes(tx, attempt.id());
        return passes.isEmpty()
                ? List.of()
                : GateAsked.answered(tx, WindingGate.wind(tx, attempt), passes, begunAt(tx, attempt));
    }

    private static long begunAt(Tx tx, AttemptNow attempt) {
        return LiveAttempts.evidence(tx, attempt.id())
                .filter(known -> LiveAttempt.of(known).phase().name() != AttemptPhase.Name.CALLED)
                .map(known -> Objects.requireNonNullElse(known.steps().windingAtMs(), Long.MAX_VALUE))
                .orElse(Long.MAX_VALUE);
    }

    private static String words(GatePassed pass, int open, UnaryOperator<String> nameOf) {
        return nameOf.apply(pass.adultId()) + ": " + pass.reason() + " (for " + open + " that were open)";
    }
}
