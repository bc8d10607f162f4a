package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_RUN_BACK;
import static org.skeinday.platform.db.schema.Tables.MOTOR_NOW;
import static org.skeinday.platform.db.schema.Tables.MOTOR_STEP;
import static org.skeinday.platform.db.schema.Tables.WINDING_WIND;

import java.util.List;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.jooq.impl.DSL;
import org.skeinday.motor.MotorStage;
import org.skeinday.platform.db.Tx;

/**
 * A motor with turns on that its attempt no longer has: another was taken before its first crank turn came in.
 *
 * @param attempt in which it was wound
 * @param wind that a reader tapped; all three are ids
 */
public record WoundBeside(String attempt, String motor, String wind) {
    /** Of one event, in the order in which they were begun. One query, nearly always without a row. */
    public static List<WoundBeside> now(Tx tx, String event) {
        return tx.sql()
                .select(WINDING_WIND.ATTEMPT_ID, WINDING_WIND.MOTOR_ID, WINDING_WIND.ID)
                .from(WINDING_WIND)
                .join(ATTEMPT)
                .on(ATTEMPT.ID.eq(WINDING_WIND.ATTEMPT_ID))
                .leftJoin(MOTOR_NOW)
                .on(MOTOR_NOW.MOTOR_ID.eq(WINDING_WIND.MOTOR_ID))
                .leftJoin(MOTOR_STEP)
                .on(MOTOR_STEP.ID.eq(MOTOR_NOW.STEP_ID))
                .where(ATTEMPT.EVENT_ID.eq(event).and(WINDING_WIND.MOTOR_ID.ne(ATTEMPT.MOTOR_ID)))
                .and(nothingWasSaidSince().and(isNotRunBack()).and(isItsLast()))
                .orderBy(WINDING_WIND.AT_MS, WINDING_WIND.ID)
                .fetch(r -> new WoundBeside(r.value1(), r.value2(), r.value3()));
    }

    /** Who said since that it broke, was run back or is out has answered; that it is wound is no answer. */
    private static Condition nothingWasSaidSince() {
        List<String> loaded = Stream.of(MotorStage.values())
                .filter(MotorStage::isLoaded)
                .map(MotorStage::word)
                .toList();
        return MOTOR_STEP
                .AT_MS
                .isNull()
                .or(MOTOR_STEP.AT_MS.le(WINDING_WIND.AT_MS))
                .or(MOTOR_STEP.STAGE.in(loaded));
    }

    private static Condition isNotRunBack() {
        return DSL.notExists(
                DSL.selectOne().from(ATTEMPT_RUN_BACK).where(ATTEMPT_RUN_BACK.WIND_ID.eq(WINDING_WIND.ID)));
    }

    /** Who has wound it again since has it in hand. */
    private static Condition isItsLast() {
        var later = WINDING_WIND.as("later");
        return DSL.notExists(DSL.selectOne()
                .from(later)
                .where(later.MOTOR_ID.eq(WINDING_WIND.MOTOR_ID).and(later.AT_MS.gt(WINDING_WIND.AT_MS))));
    }
}
