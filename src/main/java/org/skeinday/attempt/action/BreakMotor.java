package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.MotorParted;
import org.skeinday.attempt.PeopleSafe;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.motor.BreakPlace;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.Wind;

/** The motor of an attempt broke: people first, then where it parted. The spare follows. */
public final class BreakMotor {
    /**
     * It broke, as somebody saw who has no reader's key.
     *
     * @param motor that the page showed, null where it shows one only
     */
    record Broke(String attempt, @Nullable String motor) {}

    /** It did not break after all. @param motor that the page showed */
    record NotBroken(String attempt, String motor) {}

    /** Everyone is unhurt and both ends are found. @param motor that the page showed */
    record Safe(String attempt, String motor) {}

    /**
     * Where it parted.
     *
     * @param place a word of {@link BreakPlace}
     * @param seen none where the form showed that nobody had said it; null or empty where it corrects what was said
     */
    record Parted(
            String attempt,
            String motor,
            String place,
            @Nullable String seen) {}

    private static final String OTHER_MOTOR = "This attempt has another motor by now: look again.";

    private BreakMotor() {}

    static Decision broke(Tx tx, ActContext context, Broke broke) {
        AttemptEvidence known = LiveAttempts.evidence(tx, broke.attempt()).orElse(null);
        if (known == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        LiveAttempt live = LiveAttempt.of(known);
        Optional<Decision> refused = PhaseGate.refused(tx, context, live, AttemptAct.BROKE);
        if (refused.isPresent()) {
            return refused.get();
        }
        String motor = live.motorId();
        if (motor == null) {
            return Decision.refused("This attempt has no motor on record that could have broken");
        }
        if (broke.motor() != null && !broke.motor().equals(motor)) {
            return new Decision.Outdated(OTHER_MOTOR);
        }
        List<Fact> facts = new ArrayList<>(
                known.now().state() == State.RELEASED
                        ? BrokenMotor.seenAloft(tx, context, motor)
                        : BrokenMotor.seen(tx, context, motor, known.presentWind()));
        facts.add(PhaseGate.acted(context, live.id(), AttemptAct.BROKE));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    /** The motor is as it was before, whoever said that it broke. */
    static Decision notBroken(Tx tx, ActContext context, NotBroken mistake) {
        AttemptEvidence known = LiveAttempts.evidence(tx, mistake.attempt()).orElse(null);
        if (known == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        LiveAttempt live = LiveAttempt.of(known);
        Optional<Decision> refused = PhaseGate.refused(tx, context, live, AttemptAct.NOT_BROKEN);
        if (refused.isPresent()) {
            return refused.get();
        }
        if (!mistake.motor().equals(live.motorId())) {
            return new Decision.Outdated(OTHER_MOTOR);
        }
        List<Fact> facts = new ArrayList<>(BrokenMotor.takenBack(tx, context, mistake.motor(), known.presentWind()));
        facts.add(PhaseGate.acted(context, live.id(), AttemptAct.NOT_BROKEN));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    static Decision safe(Tx tx, ActContext context, Safe safe) {
        AttemptEvidence known = LiveAttempts.evidence(tx, safe.attempt()).orElse(null);
        if (known == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        LiveAttempt live = LiveAttempt.of(known);
        boolean isSaid = live.phase() instanceof AttemptPhase.Broke broke && broke.peopleSafe();
        if (isSaid && safe.motor().equals(live.motorId())) { // two said the same
            return new Decision.Decided(List.of(), Map.of(), PhaseGate.FIRST);
        }
        Optional<Decision> refused = PhaseGate.refused(tx, context, live, AttemptAct.PEOPLE_SAFE);
        return refused.orElseGet(() -> Decision.decided(
                PhaseGate.FIRST,
                safe(context, known, String.valueOf(live.motorId())),
                PhaseGate.acted(context, live.id(), AttemptAct.PEOPLE_SAFE)));
    }

    /** The reader's key says the same. Empty where somebody has said so, or for a wind without an attempt. */
    public static Optional<Fact> safe(Tx tx, ActContext context, Wind wind) {
        String motor = wind.begun().motorId();
        return Optional.ofNullable(wind.begun().attemptId())
                .flatMap(attempt -> LiveAttempts.evidence(tx, attempt))
                .filter(known -> !known.breakOf(motor).peopleSafe())
                .map(known -> safe(context, known, motor));
    }

    private static Fact safe(ActContext context, AttemptEvidence known, String motor) {
        long atMs = known.answerAtMs(motor, context.now().toEpochMilli());
        return Fact.of(
                "attempt.people-safe",
                new PeopleSafe(known.now().id(), motor, atMs, context.personOrNull(), context.device()));
    }

    private static final String PEOPLE_FIRST =
            "First: is everyone unhurt, are both ends found? Then say where the motor parted";
    private static final String NOTHING_BROKE = "Where a motor parted is said after it broke";

    /** May be corrected as long as anybody likes: it is evidence and moves nothing. */
    static Decision parted(Tx tx, ActContext context, Parted parted) {
        AttemptEvidence known = LiveAttempts.evidence(tx, parted.attempt()).orElse(null);
        if (known == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        boolean inTheAir =
                known.brokeInTheAir() && parted.motor().equals(known.now().motorId());
        if (!inTheAir && !known.breakOf(parted.motor()).peopleSafe()) {
            boolean broke = LiveAttempt.of(known).phase().name() == AttemptPhase.Name.BROKE;
            return Decision.refused(PhaseGate.wrong(tx, context, known.now(), broke ? PEOPLE_FIRST : NOTHING_BROKE));
        }
        BreakPlace before = known.breakOf(parted.motor()).where();
        if ("none".equals(parted.seen()) && before != null && !before.word().equals(parted.place())) {
            return new Decision.Outdated("Somebody has said where it parted meanwhile: " + before.word() + ".");
        }
        try {
            List<Fact> facts = new ArrayList<>();
            facts.add(PhaseGate.acted(context, known.now().id(), AttemptAct.SAY_WHERE));
            facts.add(Fact.of(
                    "attempt.parted",
                    new MotorParted(
                            known.now().id(),
                            parted.motor(),
                            parted.place(),
                            known.answerAtMs(parted.motor(), context.now().toEpochMilli()),
                            context.personOrNull(),
                            context.device())));
            told(tx, parted.motor(), BreakPlace.of(parted.place())).ifPresent(facts::add);
            return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
        } catch (IllegalArgumentException e) {
            return Decision.refused("place", String.valueOf(e.getMessage()));
        }
    }

    /** The motor's own break says it too. */
    private static Optional<Fact> told(Tx tx, String motor, BreakPlace place) {
        return MotorLifeStore.breakOf(tx, motor).map(step -> told(step, place));
    }

    private static Fact told(MotorStep step, BreakPlace place) {
        return Fact.of("motor.step.told", step.partedAt(place));
    }
}
