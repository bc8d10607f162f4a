package org.skeinday.bench.web;

import java.util.Locale;
import java.util.Optional;
import org.skeinday.attempt.web.PageWords;
import org.skeinday.bench.action.JudgeBreak;
import org.skeinday.bench.action.MistakenBreak;
import org.skeinday.motor.BreakCause;
import org.skeinday.motor.BreakPlace;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.winding.MotorBreak;
import org.skeinday.winding.store.BreakEvidenceStore;

/** What a break counts as, in words, and what the coach has said of it. */
final class BreakWords {
    private BreakWords() {}

    /** Empty while the motor is whole. @param form with what was just said */
    static Optional<BenchView.Broke> of(Tx tx, MotorAdded motor, boolean coach, FormErrors form) {
        return BreakEvidenceStore.of(tx, motor)
                .map(broke -> new BenchView.Broke(
                        turns(broke) + said(broke) + "."
                                + MotorLifeStore.breakOf(tx, motor.id())
                                        .map(BreakWords::where)
                                        .orElse(""),
                        MotorLifeStore.breakOf(tx, motor.id())
                                .flatMap(MotorStep::cause)
                                .map(BreakCause::word)
                                .orElse(""),
                        MotorLifeStore.breakOf(tx, motor.id())
                                .map(step -> JudgeBreak.seen(tx, step))
                                .orElse(""),
                        broke.asked().words(),
                        !broke.read(),
                        coach,
                        form.message("cause"),
                        MotorLifeStore.breakOf(tx, motor.id())
                                .map(MotorStep::id)
                                .orElse(""),
                        form.message(MistakenBreak.FIELD)));
    }

    private static String turns(MotorBreak broke) {
        Double turns = broke.motorTurns();
        return turns == null ? "At turns that nobody counted: " : "At " + Math.round(turns) + " motor turns: ";
    }

    /** As a cell of a table. */
    static String kind(MotorBreak broke) {
        return !broke.ofTheRubber() ? "outside the rubber" : broke.test() ? "break test" : "accident";
    }

    private static String said(MotorBreak broke) {
        if (!broke.ofTheRubber()) {
            return "the cause lay outside the rubber, so it says nothing of its strength but that it stood so much";
        }
        return broke.test()
                ? "a break test, from which K and the torque limit come"
                : "an accident, which counts in the risk of breaking and gives neither K nor a torque limit";
    }

    /** Where it parted, as somebody saw it; a cause outside the rubber that the coach gave is chosen below. */
    private static String where(MotorStep broke) {
        String parted = broke.parted();
        boolean outside = broke.wasSeenOutsideTheRubber();
        if (parted == null || outside && broke.coachHasSpoken()) {
            return "";
        }
        return " Where it parted: " + PageWords.place(BreakPlace.of(parted)).toLowerCase(Locale.ROOT)
                + (outside ? ", as somebody saw it. It counts as the rubber's until the coach says so." : ".");
    }
}
