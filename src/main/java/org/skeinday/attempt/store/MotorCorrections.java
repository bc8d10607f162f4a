package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_MOTOR_CORRECTED;

import java.util.List;
import org.skeinday.attempt.MotorCorrected;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** Attempts that were flown with another motor than the record had. */
public final class MotorCorrections {
    private MotorCorrections() {}

    static List<FactKind> kinds() {
        return List.of(FactKind.of("attempt.motor-corrected", MotorCorrected.class, MotorCorrections::corrected));
    }

    private static void corrected(Tx tx, MotorCorrected fact) {
        Rows.into(ATTEMPT_MOTOR_CORRECTED).accept(tx, fact);
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.MOTOR_ID, fact.motorId())
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }

    /** Of one attempt, the first one first. */
    public static List<MotorCorrected> of(Tx tx, String attempt) {
        return tx.sql()
                .selectFrom(ATTEMPT_MOTOR_CORRECTED)
                .where(ATTEMPT_MOTOR_CORRECTED.ATTEMPT_ID.eq(attempt))
                .orderBy(ATTEMPT_MOTOR_CORRECTED.AT_MS, ATTEMPT_MOTOR_CORRECTED.ID)
                .fetchInto(MotorCorrected.class);
    }
}
