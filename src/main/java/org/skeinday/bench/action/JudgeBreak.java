package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.skeinday.attempt.MotorParted;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.motor.BreakCause;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** The coach says why a motor broke: until then no break by accident is a break test. May be said anew at any time. */
final class JudgeBreak {
    private static final Set<String> TOPICS = Set.of("motors", "attempts", "winds");

    /** @param cause a word of {@link BreakCause} */
    record Judged(String motor, String cause) {}

    private JudgeBreak() {}

    static ActKind<?> kind() {
        return new ActKind<>("motor.break-judged", Judged.class, JudgeBreak::decide);
    }

    static Decision decide(Tx tx, ActContext context, Judged judged) {
        MotorStep broke = MotorLifeStore.breakOf(tx, judged.motor()).orElse(null);
        if (broke == null) {
            return Decision.refused("cause", "This motor is not broken: there is nothing to say of its break");
        }
        try {
            MotorStep told = broke.by(BreakCause.of(judged.cause()));
            List<Fact> facts = new ArrayList<>(List.of(Fact.of("motor.step.told", told)));
            parted(tx, context, told).ifPresent(facts::add);
            return new Decision.Decided(facts, Map.of(), TOPICS);
        } catch (IllegalArgumentException e) {
            return Decision.refused("cause", String.valueOf(e.getMessage()));
        }
    }

    /** The attempt in which it broke says the same. */
    private static Optional<Fact> parted(Tx tx, ActContext context, MotorStep told) {
        String place = told.parted();
        return place == null
                ? Optional.empty()
                : BreakRecord.attemptBrokenWith(tx, told.motorId())
                        .flatMap(attempt -> LiveAttempts.evidence(tx, attempt))
                        .map(known -> Fact.of(
                                "attempt.parted",
                                new MotorParted(
                                        known.now().id(),
                                        told.motorId(),
                                        place,
                                        known.answerAtMs(
                                                told.motorId(), context.now().toEpochMilli()),
                                        context.personOrNull(),
                                        context.device())));
    }
}
