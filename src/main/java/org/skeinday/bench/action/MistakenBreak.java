package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.AttemptActions;
import org.skeinday.attempt.action.BrokenMotor;
import org.skeinday.motor.BreakMistaken;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/**
 * A motor did not break after all, whenever that is found: it stands where it stood, its wind is whole, and no risk counts
 * it. Within seconds the slip of a key is undone without a word; later it takes a reason, which stays in the record.
 */
public final class MistakenBreak {
    /** The field of a form beside which a refusal stands. */
    public static final String FIELD = "mistake";

    /** @param seen id of the break that the page showed; null where it named none */
    record NotBroken(String motor, String reason, @Nullable String seen) {}

    private MistakenBreak() {}

    static Decision decide(Tx tx, ActContext context, NotBroken told) {
        MotorLife life = MotorLifeStore.find(tx, told.motor()).orElse(null);
        if (life == null) {
            return Decision.unknown("There is no such motor; look again");
        }
        MotorStep broke = life.step();
        if (broke == null || life.stage() != MotorStage.BROKEN) {
            return isSaid(tx, told)
                    ? new Decision.Decided(List.of(), Map.of(), BenchActions.IN_HAND) // two found the same
                    : Decision.refused(
                            FIELD,
                            life.motor().tag() + " is " + life.stage().word()
                                    + ": there is no break to take back. Look again");
        }
        if (told.seen() != null && !told.seen().equals(broke.id())) {
            return new Decision.Outdated(
                    life.motor().tag() + " was said to be broken anew meanwhile. Look again, then decide.");
        }
        String reason = told.reason().strip();
        Optional<Decision> wrong = AttemptActions.wrongWords(
                FIELD, reason, "Say how it is known that the motor did not break: it stays in the record");
        return wrong.orElseGet(() -> {
            List<Fact> facts = new ArrayList<>(BrokenMotor.wholeAfterAll(tx, context, told.motor()));
            facts.add(Fact.of(
                    "motor.break-mistaken",
                    new BreakMistaken(
                            broke.id(),
                            told.motor(),
                            reason,
                            context.now().toEpochMilli(),
                            context.personOrNull(),
                            context.device())));
            return new Decision.Decided(facts, Map.of(), BenchActions.IN_HAND);
        });
    }

    private static boolean isSaid(Tx tx, NotBroken told) {
        return MotorLifeStore.mistaken(tx, told.motor()).stream()
                .anyMatch(mistake -> mistake.id().equals(told.seen()));
    }
}
