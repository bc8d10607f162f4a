package org.skeinday.motor.store;

import static org.skeinday.platform.db.schema.Tables.MOTOR_INSPECTION;

import java.util.List;
import java.util.Optional;
import org.skeinday.motor.MotorInspected;
import org.skeinday.platform.db.Tx;

/** Reads how motors were found and where they are. */
public final class InspectionStore {
    private InspectionStore() {}

    public static List<MotorInspected> all(Tx tx) {
        return tx.sql()
                .selectFrom(MOTOR_INSPECTION)
                .orderBy(MOTOR_INSPECTION.MOTOR_ID)
                .fetchInto(MotorInspected.class);
    }

    public static Optional<MotorInspected> find(Tx tx, String motor) {
        return tx.sql()
                .selectFrom(MOTOR_INSPECTION)
                .where(MOTOR_INSPECTION.MOTOR_ID.eq(motor))
                .fetchOptionalInto(MotorInspected.class);
    }
}
