package org.skeinday.attempt.action;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.State;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;

/** The motor of an attempt goes with it: wound when the attempt holds, flown when it is released. */
public final class MotorGoes {
    private MotorGoes() {}

    /** Empty when the attempt has no motor or the motor is there already. What was seen is kept, allowed or not; a broken one stays so. */
    public static Optional<Fact> with(Tx tx, ActContext context, AttemptNow attempt, State to, long atMs) {
        @Nullable String motor = attempt.motorId();
        return motor == null
                ? Optional.empty()
                : switch (to) {
                    case HOLDING -> step(tx, context, motor, MotorDeed.WIND, atMs);
                    case RELEASED -> step(tx, context, motor, MotorDeed.FLY, atMs);
                    default -> Optional.empty();
                };
    }

    /** Something that happened to a motor beside the Bench. */
    public static Optional<Fact> step(Tx tx, ActContext context, String motor, MotorDeed deed, long atMs) {
        var by = new MotorStep.By(context.nextId(), atMs, context.person(), context.device());
        return MotorLifeStore.find(tx, motor)
                .filter(life -> life.stage() != deed.to() && life.stage() != MotorStage.BROKEN)
                .map(life -> Fact.of("motor.step", life.step(deed, by, null, MotorStep.Told.NOTHING)));
    }
}
