package org.skeinday.attempt.action;

import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.steps.Answer;
import org.skeinday.steps.Step;

/** Values that are said in a list and belong to an attempt: the same there as on their own page. */
public final class SaidInLists {
    /** Item of the shipped list after landing. */
    private static final String REMAINING = "remaining";

    private SaidInLists() {}

    /** As {@link org.skeinday.steps.action.Said} asks it. */
    public static Optional<Decision> elsewhere(Tx tx, ActContext context, String subject, Step step, String answer) {
        AttemptNow attempt = AttemptStore.find(tx, subject).orElse(null);
        if (attempt == null) {
            return Optional.empty();
        }
        if (step.answer() == Answer.DIRECTION) {
            return wrongWay(tx, attempt, answer);
        }
        return step.id().equals(REMAINING) ? AfterFlight.remaining(tx, context, attempt, answer) : Optional.empty();
    }

    private static Optional<Decision> wrongWay(Tx tx, AttemptNow attempt, String answer) {
        return Optional.ofNullable(attempt.motorId())
                .flatMap(id -> MotorStore.find(tx, id))
                .filter(motor -> !motor.direction().equals(answer))
                .map(motor -> Decision.refused("answer", words(motor)));
    }

    private static String words(MotorAdded motor) {
        return "Motor " + motor.tag() + " turns "
                + (motor.direction().equals("cw") ? "clockwise" : "anticlockwise")
                + " in the record, seen from the winder: look at both arrows again before anybody cranks";
    }
}
