package org.skeinday.paper.action;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.action.MotorGoes;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;

/** What a card that is keyed in, often long after the flight, says of where its motor stands now. */
final class CardMotor {
    private CardMotor() {}

    /**
     * That it is flown; empty where the record knows better: its release was told, or something was done to it since.
     *
     * @param motor of the card; null for none
     * @param known the attempt that the card completes; empty for one that nobody called
     */
    static Optional<Fact> flown(Tx tx, ActContext context, @Nullable String motor, Optional<AttemptNow> known) {
        if (motor == null
                || known.filter(a -> wasReleasedWith(a, motor)).isPresent()
                || MotorLifeStore.find(tx, motor)
                        .filter(life -> isPast(life.stage()))
                        .isPresent()
                || known.filter(a -> isDoneSince(tx, a, motor)).isPresent()) {
            return Optional.empty();
        }
        return MotorGoes.step(tx, context, motor, MotorDeed.FLY, context.now().toEpochMilli());
    }

    private static boolean wasReleasedWith(AttemptNow attempt, String motor) {
        return attempt.releasedAtMs() != null && motor.equals(attempt.motorId());
    }

    /** Counted back, or worse: no motor comes there but after its flight. */
    private static boolean isPast(MotorStage stage) {
        return switch (stage) {
            case RUN_BACK, GRITTY, WASHED, RETIRED, BROKEN, LOST -> true;
            default -> false;
        };
    }

    /** Laid to rest again, for example; that it was wound and put on the model comes before the flight. */
    private static boolean isDoneSince(Tx tx, AttemptNow attempt, String motor) {
        Long called = attempt.calledAtMs();
        return called != null
                && MotorLifeStore.stepsOf(tx, motor).stream()
                        .anyMatch(step -> step.atMs() > called && !isBeforeFlight(step));
    }

    private static boolean isBeforeFlight(MotorStep step) {
        MotorStage stage = step.stageNow();
        return stage.isLoaded() || stage == MotorStage.READY;
    }
}
