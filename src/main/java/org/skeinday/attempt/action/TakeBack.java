package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LandedAttempt;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.Removed;

/** A release or a landing that was none: the attempt stands where it stood before. */
public final class TakeBack {
    /** @param seen what the form showed, as {@link org.skeinday.attempt.Seen} writes it */
    public record Step(String attempt, @Nullable String seen) {}

    private TakeBack() {}

    static Decision decide(Tx tx, ActContext context, Step step) {
        AttemptEvidence known = LiveAttempts.evidence(tx, step.attempt()).orElse(null);
        if (known == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        AttemptNow now = known.now();
        AttemptAct act = now.state() == State.LANDED ? AttemptAct.STILL_FLYING : AttemptAct.NOT_RELEASED;
        return AttemptActions.outdated(step.seen(), known)
                .or(() -> PhaseGate.refused(tx, context, LiveAttempt.of(known), act))
                .orElseGet(() -> back(tx, context, now, act));
    }

    private static Decision back(Tx tx, ActContext context, AttemptNow now, AttemptAct act) {
        long atMs = context.now().toEpochMilli();
        List<Fact> facts = new ArrayList<>(
                Attempt.of(now) instanceof ReleasedAttempt released
                        ? release(tx, now, released, atMs)
                        : List.of(Fact.of("attempt.taken-back", new LandedAttempt(now.id()).fliesOn(atMs))));
        facts.add(PhaseGate.acted(context, now.id(), act));
        return new Decision.Decided(facts, Map.of(), AttemptActions.MOVED);
    }

    /** The motor was not flown either. */
    static List<Fact> release(Tx tx, AttemptNow now, ReleasedAttempt released, long atMs) {
        List<Fact> facts = new ArrayList<>();
        facts.add(
                Fact.of("attempt.taken-back", released.neverLeft(AttemptStore.stateBeforeRelease(tx, now.id()), atMs)));
        String motor = now.motorId();
        if (motor != null) {
            MotorLifeStore.find(tx, motor)
                    .filter(life -> life.stage() == MotorStage.FLOWN)
                    .flatMap(life -> Optional.ofNullable(life.step()))
                    .ifPresent(step -> facts.add(Fact.of("motor.step.undone", new Removed(step.id()))));
        }
        return facts;
    }
}
