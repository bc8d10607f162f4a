package org.skeinday.bench.web;

import java.util.List;
import java.util.Optional;
import org.skeinday.bench.action.JudgeBreak;
import org.skeinday.motor.BreakCause;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.MotorBreak;
import org.skeinday.winding.store.BreakEvidenceStore;
import org.skeinday.winding.store.WindWorth;

/** Which breaks wait for the coach: those that were no test from the start, and numbers of a break that are asked about. */
public final class BreakQuestions {
    private BreakQuestions() {}

    /** By tag. */
    public static List<BreakQuestion> open(Tx tx) {
        var worth = new WindWorth(tx);
        return MotorLifeStore.all(tx).stream()
                .filter(life -> life.stage() == MotorStage.BROKEN)
                .flatMap(life -> of(tx, life, worth).stream())
                .toList();
    }

    private static Optional<BreakQuestion> of(Tx tx, MotorLife life, WindWorth worth) {
        MotorStep step = MotorLifeStore.breakOf(tx, life.motor().id()).orElse(null);
        MotorBreak broke = BreakEvidenceStore.of(tx, life.motor(), worth).orElse(null);
        if (step == null || broke == null) {
            return Optional.empty();
        }
        boolean judged = step.coachHasSpoken() || broke.test();
        String asked = broke.read() ? "" : broke.asked().words(); // of a wind that was read the wind itself asks
        return judged && asked.isEmpty()
                ? Optional.empty()
                : Optional.of(new BreakQuestion(
                        life.motor().id(),
                        "Motor " + life.motor().tag() + " broke" + turns(broke) + ": " + BreakWords.kind(broke),
                        asked,
                        step.cause().map(BreakCause::word).orElse(""),
                        JudgeBreak.seen(tx, step),
                        step.id(),
                        judged));
    }

    private static String turns(MotorBreak broke) {
        Double turns = broke.motorTurns();
        return turns == null ? "" : " at " + Math.round(turns) + " motor turns";
    }
}
