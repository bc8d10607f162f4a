package org.skeinday.attempt.action;

import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LastAct;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Acts of a person that belong to a phase: refused in another, with what can be done; told apart from what came second. */
public final class PhaseGate {
    /** Own default: two devices that act within so long have not seen each other. */
    private static final long AT_ONCE_MS = 10_000;

    /** Pages that show an attempt, its motor or its wind. */
    public static final Set<String> TOPICS = Set.of("attempts", "motors", "winds");
    /** The same, where it may come before everything else on every page. */
    public static final Set<String> FIRST = Set.of("attempts", "motors", "winds", "checks", "first");

    private PhaseGate() {}

    /** Why the attempt does not have this act now, with what the caller can do; empty when it does. Who may is the route's. */
    static Optional<Decision> refused(Tx tx, ActContext context, LiveAttempt attempt, AttemptAct act) {
        if (AttemptActs.of(attempt).contains(act)) {
            return act.putsTurnsOn() ? hallStopped(tx, attempt) : Optional.empty();
        }
        String words = PhaseWords.wrongPhase(attempt, CallerHands.of(tx, context));
        return Optional.of(
                isJustMovedByAnother(tx, context, attempt.id())
                        ? new Decision.Outdated(words)
                        : Decision.refused(words));
    }

    /**
     * What the captain does with an attempt that is known, by a form that is not outdated, in a phase that has the act.
     *
     * @param seen what the form showed, as {@link org.skeinday.attempt.Seen} writes it
     */
    static Decision captain(
            Tx tx,
            ActContext context,
            String attempt,
            @Nullable String seen,
            AttemptAct act,
            Function<AttemptEvidence, Decision> does) {
        AttemptEvidence known = LiveAttempts.evidence(tx, attempt).orElse(null);
        if (known == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        return AttemptActions.outdated(seen, known)
                .or(() -> refused(tx, context, LiveAttempt.of(known), act))
                .orElseGet(() -> does.apply(known));
    }

    /**
     * A refusal that has more to say than the phase.
     *
     * @param why which phase the act belongs to, as a sentence without its stop
     */
    static String wrong(Tx tx, ActContext context, AttemptNow now, String why) {
        LiveAttempt live = LiveAttempts.find(tx, now.id()).orElseThrow();
        return why + ". " + PhaseWords.wrongPhase(live, CallerHands.of(tx, context));
    }

    /** The same as a decision: whoever comes second within seconds is told who was quicker. */
    public static Decision wrongNow(Tx tx, ActContext context, AttemptNow now, String why) {
        String words = wrong(tx, context, now, why);
        return isJustMovedByAnother(tx, context, now.id()) ? new Decision.Outdated(words) : Decision.refused(words);
    }

    private static Optional<Decision> hallStopped(Tx tx, LiveAttempt attempt) {
        return AttemptStore.find(tx, attempt.id()).flatMap(now -> StopHall.refused(tx, now.eventId()));
    }

    private static boolean isJustMovedByAnother(Tx tx, ActContext context, String attempt) {
        return BreakRecord.lastAct(tx, attempt)
                .filter(last -> !last.device().equals(context.device()))
                .filter(last -> context.now().toEpochMilli() - last.atMs() < AT_ONCE_MS)
                .isPresent();
    }

    /** Who moved it, for whoever comes second. */
    public static Fact acted(ActContext context, String attempt, AttemptAct act) {
        return acted(context, attempt, act.words());
    }

    /** @param said what they did, as a key has it */
    static Fact acted(ActContext context, String attempt, String said) {
        return Fact.of(
                "attempt.acted",
                new LastAct(attempt, said, context.now().toEpochMilli(), context.personOrNull(), context.device()));
    }
}
