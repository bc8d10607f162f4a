package org.skeinday.motor.store;

import static org.skeinday.platform.db.schema.Tables.MOTOR;
import static org.skeinday.platform.db.schema.Tables.MOTOR_BATCH;

import java.util.List;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.record.FactKind;

/** The motors' kinds of fact. Columns carry the names of the record's fields. */
public final class MotorFacts {
    private MotorFacts() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of(
                        "batch.added",
                        BatchAdded.class,
                        (tx, fact) -> tx.sql().executeInsert(tx.sql().newRecord(MOTOR_BATCH, fact))),
                FactKind.of(
                        "motor.added",
                        MotorAdded.class,
                        (tx, fact) -> tx.sql().executeInsert(tx.sql().newRecord(MOTOR, fact))));
    }
}
