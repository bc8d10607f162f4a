package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.MotorCorrected;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.MotorsInHand;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.Removed;
import org.skeinday.winding.WindMotor;

/**
 * After the release somebody sees by its tag that another motor was flown than the record has: its uses, its wind and its
 * figures go over to that one, with a reason.
 */
public final class CorrectMotor {
    /** Fields of the form. */
    public static final String MOTOR = "flown-motor";

    public static final String WHY = "flown-why";

    private static final Set<String> OF_THE_FLIGHT =
            Set.of(MotorDeed.WIND.word(), MotorDeed.LOAD.word(), MotorDeed.FLY.word());

    /** @param seen motor that the page showed; empty for none */
    public record Flown(String attempt, String motor, String seen, String reason) {}

    private CorrectMotor() {}

    static Decision decide(Tx tx, ActContext context, Flown flown) {
        AttemptEvidence known = LiveAttempts.evidence(tx, flown.attempt()).orElse(null);
        MotorLife life = MotorLifeStore.find(tx, flown.motor()).orElse(null);
        if (known == null || life == null) {
            return Decision.unknown("There is no such attempt or motor; look again");
        }
        AttemptNow now = known.now();
        String before = now.motorId();
        if (flown.motor().equals(before)) { // two said the same
            return new Decision.Decided(List.of(), Map.of(), PhaseGate.TOPICS);
        }
        if (!now.state().hasLeftTheHand()) {
            return Decision.refused(
                    MOTOR, PhaseGate.wrong(tx, context, now, "Which motor was flown is corrected after the release"));
        }
        if (!flown.seen().equals(before == null ? "" : before)) {
            return new Decision.Outdated("Somebody else has corrected its motor meanwhile. Look again, then decide.");
        }
        return AttemptActions.wrongWords(WHY, flown.reason().strip(), AttemptActions.SAY_WHY)
                .or(() -> notThisOne(tx, now, life).map(no -> Decision.refused(MOTOR, no)))
                .or(() -> stillBroken(tx, now).map(no -> Decision.refused(MOTOR, no)))
                .orElseGet(
                        () -> new Decision.Decided(facts(tx, context, known, life, flown), Map.of(), PhaseGate.FIRST));
    }

    private static Optional<String> notThisOne(Tx tx, AttemptNow now, MotorLife life) {
        return EntryStore.find(tx, now.entryId())
                .flatMap(entry -> WhyNotFly.wrongMotor(tx, entry, life.motor().id()))
                .or(() -> Optional.ofNullable(MotorsInHand.byMotor(tx, now.eventId())
                                .get(life.motor().id()))
                        .filter(holder -> !holder.equals(now.id()))
                        .flatMap(holder -> AttemptStore.find(tx, holder))
                        .map(holder -> life.motor().tag() + " is in the hands of " + WhyNotFly.entryName(tx, holder)
                                + "'s " + holder.number().words() + ": name another motor there first"));
    }

    /** Which of the two broke then, nobody has said. */
    private static Optional<String> stillBroken(Tx tx, AttemptNow now) {
        long calledMs = now.calledAtMs() == null ? 0 : now.calledAtMs();
        return Optional.ofNullable(now.motorId())
                .flatMap(motor -> MotorLifeStore.find(tx, motor))
                .filter(life -> MotorLifeStore.breakOf(tx, life.motor().id())
                        .filter(broke -> broke.atMs() >= calledMs)
                        .isPresent())
                .map(life ->
                        life.motor().tag() + " is said to have broken in this attempt: say first, on its page, that"
                                + " it did not break");
    }

    private static List<Fact> facts(Tx tx, ActContext context, AttemptEvidence known, MotorLife life, Flown flown) {
        AttemptNow now = known.now();
        List<Fact> facts = new ArrayList<>();
        known.presentWind()
                .map(wind -> Fact.of(
                        "wind.motor",
                        new WindMotor(wind.begun().id(), life.motor().id())))
                .ifPresent(facts::add);
        facts.addAll(notFlown(tx, now));
        facts.add(Fact.of(
                "attempt.motor-corrected",
                new MotorCorrected(
                        context.ownId(),
                        now.id(),
                        life.motor().id(),
                        now.motorId(),
                        flown.reason().strip(),
                        context.now().toEpochMilli(),
                        context.personOrNull(),
                        context.device())));
        MotorGoes.step(
                        tx,
                        context,
                        life.motor().id(),
                        MotorDeed.FLY,
                        context.now().toEpochMilli())
                .ifPresent(facts::add);
        facts.add(PhaseGate.acted(context, now.id(), "Another motor was flown"));
        return facts;
    }

    /** What stands of this flight in the life of the motor that was not flown; what was done to it since stays. */
    private static List<Fact> notFlown(Tx tx, AttemptNow now) {
        String motor = now.motorId();
        long calledMs = now.calledAtMs() == null ? Long.MAX_VALUE : now.calledAtMs();
        List<Fact> facts = new ArrayList<>();
        if (motor == null) {
            return facts;
        }
        @Nullable
        MotorStep step = MotorLifeStore.find(tx, motor).map(MotorLife::step).orElse(null);
        while (step != null && OF_THE_FLIGHT.contains(step.deed()) && step.atMs() >= calledMs) {
            facts.add(Fact.of("motor.step.undone", new Removed(step.id())));
            String before = step.beforeId();
            step = before == null ? null : MotorLifeStore.step(tx, before).orElse(null);
        }
        return facts;
    }
}
