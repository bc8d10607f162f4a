package org.skeinday.motor.store;

import static org.skeinday.platform.db.schema.Tables.MOTOR_BREAK_MISTAKEN;
import static org.skeinday.platform.db.schema.Tables.MOTOR_CLOCK_JUMP;
import static org.skeinday.platform.db.schema.Tables.MOTOR_NOW;
import static org.skeinday.platform.db.schema.Tables.MOTOR_PLACE;
import static org.skeinday.platform.db.schema.Tables.MOTOR_SHIFT;
import static org.skeinday.platform.db.schema.Tables.MOTOR_STEP;
import static org.skeinday.platform.db.schema.Tables.MOTOR_WAIT;

import java.util.List;
import org.jooq.impl.DSL;
import org.skeinday.motor.BreakMistaken;
import org.skeinday.motor.ClockJump;
import org.skeinday.motor.MotorPlaced;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.Wait;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Removed;

/** What was done to motors, as rows. */
public final class MotorLifeFacts {
    private MotorLifeFacts() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("motor.step", MotorStep.class, MotorLifeFacts::step),
                FactKind.of("motor.step.told", MotorStep.class, Rows.change(MOTOR_STEP)),
                FactKind.of("motor.step.undone", Removed.class, MotorLifeFacts::undone),
                FactKind.of("motor.break-mistaken", BreakMistaken.class, Rows.put(MOTOR_BREAK_MISTAKEN)),
                FactKind.of("motor.wait", Wait.class, Rows.put(MOTOR_WAIT)),
                FactKind.of("motor.placed", MotorPlaced.class, MotorLifeFacts::placed),
                FactKind.of("clock.jumped", ClockJump.class, MotorLifeFacts::jumped),
                FactKind.of("clock.slept", ClockJump.class, MotorLifeFacts::slept));
    }

    private static void step(Tx tx, MotorStep fact) {
        Rows.into(MOTOR_STEP).accept(tx, fact);
        stands(tx, fact.motorId(), fact.id());
    }

    private static void stands(Tx tx, String motor, String step) {
        tx.sql()
                .insertInto(MOTOR_NOW, MOTOR_NOW.MOTOR_ID, MOTOR_NOW.STEP_ID)
                .values(motor, step)
                .onConflict(MOTOR_NOW.MOTOR_ID)
                .doUpdate()
                .set(MOTOR_NOW.STEP_ID, step)
                .execute();
        Rows.remove(tx, MOTOR_SHIFT.MOTOR_ID, motor);
    }

    private static void undone(Tx tx, Removed fact) {
        tx.sql()
                .update(MOTOR_STEP)
                .set(MOTOR_STEP.UNDONE, true)
                .where(MOTOR_STEP.ID.eq(fact.id()))
                .execute();
        var step = tx.sql()
                .selectFrom(MOTOR_STEP)
                .where(MOTOR_STEP.ID.eq(fact.id()))
                .fetchSingle();
        if (step.getBeforeId() == null) {
            Rows.remove(tx, MOTOR_NOW.MOTOR_ID, step.getMotorId());
        } else {
            stands(tx, step.getMotorId(), step.getBeforeId());
        }
    }

    private static void placed(Tx tx, MotorPlaced fact) {
        Rows.remove(tx, MOTOR_PLACE.MOTOR_ID, fact.motorId());
        if (fact.place() != null) {
            Rows.into(MOTOR_PLACE).accept(tx, fact);
        }
    }

    /** All that stands now began before the jump. */
    private static void jumped(Tx tx, ClockJump fact) {
        Rows.into(MOTOR_CLOCK_JUMP).accept(tx, fact);
        tx.sql()
                .insertInto(MOTOR_SHIFT, MOTOR_SHIFT.MOTOR_ID, MOTOR_SHIFT.JUMP_ID, MOTOR_SHIFT.BY_MS)
                .select(tx.sql()
                        .select(MOTOR_NOW.MOTOR_ID, DSL.val(fact.id()), DSL.val(fact.byMs()))
                        .from(MOTOR_NOW))
                .execute();
    }

    private static void slept(Tx tx, ClockJump fact) {
        Rows.change(MOTOR_CLOCK_JUMP).accept(tx, fact);
        if (Boolean.TRUE.equals(fact.slept())) {
            Rows.remove(tx, MOTOR_SHIFT.JUMP_ID, fact.id());
        }
    }
}
