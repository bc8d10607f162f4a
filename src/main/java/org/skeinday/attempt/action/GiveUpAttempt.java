package org.skeinday.attempt.action;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptGivenUp;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Gives an attempt up: before its release it is scrubbed, after it void. */
public final class GiveUpAttempt {
    private GiveUpAttempt() {}

    /** Gives an attempt up, with a reason. @param again whether after its release it is flown again and uses up nothing */
    public record GiveUp(
            String attempt,
            String reason,
            @Nullable String seen,
            @Nullable Boolean again) {}

    static Decision decide(Tx tx, ActContext context, GiveUp giveUp) {
        AttemptEvidence known = LiveAttempts.evidence(tx, giveUp.attempt()).orElse(null);
        if (known == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        LiveAttempt live = LiveAttempt.of(known);
        AttemptNow now = known.now();
        String reason = giveUp.reason().strip();
        Attempt attempt = Attempt.of(now);
        AttemptAct act = attempt instanceof Attempt.AfterRelease ? AttemptAct.DECLARE_VOID : AttemptAct.ABANDON;
        return AttemptActions.outdated(giveUp.seen(), known)
                .or(() -> PhaseGate.refused(tx, context, live, act))
                .or(() -> AttemptActions.wrongWords("reason", reason, AttemptActions.SAY_WHY))
                .orElseGet(() -> ended(
                        tx,
                        context,
                        now,
                        attempt instanceof Attempt.AfterRelease after
                                ? declaredVoid(after, context, giveUp, reason)
                                : abandoned(tx, (Attempt.BeforeRelease) attempt, context, known, reason)));
    }

    private static AttemptGivenUp declaredVoid(
            Attempt.AfterRelease attempt, ActContext context, GiveUp giveUp, String reason) {
        AttemptGivenUp fact = attempt.declareVoid(context.now().toEpochMilli(), reason);
        return Boolean.TRUE.equals(giveUp.again()) ? fact.again() : fact;
    }

    /** What is wound must be run back before anything else. */
    private static AttemptGivenUp abandoned(
            Tx tx, Attempt.BeforeRelease attempt, ActContext context, AttemptEvidence known, String reason) {
        AttemptGivenUp fact = attempt.scrub(context.now().toEpochMilli(), reason);
        String motor = known.now().motorId();
        return motor != null && isWound(tx, known, motor) ? fact.wound() : fact;
    }

    /** By its phase, by a wind that a reader tapped, or by what was noted of its motor: whoever spoke is believed. */
    private static boolean isWound(Tx tx, AttemptEvidence known, String motor) {
        return switch (LiveAttempt.of(known).phase().name()) {
            case WINDING, HOLDING -> true;
            case BROKE -> false;
            default ->
                known.presentWind().filter(wind -> wind.broke().isEmpty()).isPresent()
                        || MotorLifeStore.find(tx, motor)
                                .filter(life -> life.stage().isLoaded())
                                .isPresent();
        };
    }

    /**
     * A first crank turn that came in after its attempt was given up: its turns are on. Empty for an attempt that was not
     * given up before its release, and where the motor was run back since.
     *
     * @param atMs of the turn
     */
    public static Optional<Fact> turnsOn(Tx tx, AttemptNow now, String motor, long atMs) {
        return LiveAttempts.evidence(tx, now.id())
                .filter(known -> now.state() == State.SCRUBBED && !known.isRunBackSince(motor, atMs))
                .map(known -> new AttemptGivenUp(
                                now.id(),
                                now.state().word(),
                                Objects.requireNonNullElse(now.closedAtMs(), atMs),
                                Objects.requireNonNullElse(now.voidReason(), ""),
                                now.flownAgain(),
                                null)
                        .wound())
                .map(fact -> Fact.of("attempt.given-up", fact));
    }

    private static Decision ended(Tx tx, ActContext context, AttemptNow attempt, AttemptGivenUp fact) {
        List<Fact> facts =
                AttemptActions.withQuietEnded(tx, attempt.id(), fact.atMs(), Fact.of("attempt.given-up", fact));
        if (attempt.releasedAtMs() != null) {
            facts.add(JudgeFlight.fact(tx, context, attempt));
        }
        facts.add(PhaseGate.acted(
                context,
                attempt.id(),
                fact.state().equals(State.VOID.word()) ? AttemptAct.DECLARE_VOID : AttemptAct.ABANDON));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }
}
