package org.skeinday.attempt.action;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.steps.ItemAnswer;
import org.skeinday.steps.Step;

/** Values that are said in a list and belong to something else: the same there as on their own page. */
public final class SaidInLists {
    /** Items of the shipped list after landing. */
    private static final String REMAINING = "remaining";

    static final String CONTACTS = "contacts";

    private SaidInLists() {}

    /** As {@link org.skeinday.steps.action.StepEffect} asks it. */
    public static Optional<Decision> elsewhere(
            Tx tx, ActContext context, String subject, Step step, String answer, @Nullable String insist) {
        return AttemptStore.find(tx, subject)
                .map(attempt -> ofAttempt(tx, context, attempt, step, answer, insist))
                .orElseGet(() -> SaidBeside.of(tx, context, subject, step, answer));
    }

    private static Optional<Decision> ofAttempt(
            Tx tx, ActContext context, AttemptNow attempt, Step step, String answer, @Nullable String insist) {
        if (step.answer() == ItemAnswer.DIRECTION) {
            return wrongWay(tx, attempt, answer);
        }
        if (step.answer() == ItemAnswer.RATIO) {
            return SaidBeside.ratio(context, station(tx, attempt), answer);
        }
        return switch (step.id()) {
            case REMAINING -> AfterFlight.remaining(tx, context, attempt, answer, insist);
            case CONTACTS -> AfterFlight.contacts(tx, attempt, answer);
            default -> Optional.empty();
        };
    }

    /** The winding place that a list is about which is of no attempt. */
    public static Optional<StationAdded> station(Tx tx, String subject) {
        return SaidBeside.station(tx, subject);
    }

    private static Optional<StationAdded> station(Tx tx, AttemptNow attempt) {
        return EntryStore.find(tx, attempt.entryId()).flatMap(entry -> Stations.of(tx, entry, attempt.id()));
    }

    private static Optional<Decision> wrongWay(Tx tx, AttemptNow attempt, String answer) {
        return Optional.ofNullable(attempt.motorId())
                .flatMap(id -> MotorStore.find(tx, id))
                .filter(motor -> !motor.direction().equals(answer))
                .map(motor -> Decision.refused("answer", words(motor)));
    }

    private static String words(MotorAdded motor) {
        return "Motor " + motor.tag() + " turns "
                + motor.turns().words()
                + " in the record, seen from the winder: look at both arrows again before anybody cranks";
    }
}
