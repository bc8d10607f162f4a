package org.skeinday.motor.store;

import static org.skeinday.platform.db.schema.Tables.MOTOR;
import static org.skeinday.platform.db.schema.Tables.MOTOR_BATCH;
import static org.skeinday.platform.db.schema.Tables.MOTOR_INSPECTION;
import static org.skeinday.platform.db.schema.Tables.MOTOR_NOW;
import static org.skeinday.platform.db.schema.Tables.MOTOR_PLACE;

import java.util.List;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorInspected;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Removed;

/** The motors' kinds of fact. Columns carry the names of the record's fields. */
public final class MotorFacts {
    private MotorFacts() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("batch.added", BatchAdded.class, Rows.into(MOTOR_BATCH)),
                FactKind.of("batch.changed", BatchAdded.class, Rows.change(MOTOR_BATCH)),
                FactKind.of("batch.removed", Removed.class, (tx, fact) -> Rows.remove(tx, MOTOR_BATCH.ID, fact.id())),
                FactKind.of("motor.added", MotorAdded.class, Rows.into(MOTOR)),
                FactKind.of("motor.changed", MotorAdded.class, Rows.change(MOTOR)),
                FactKind.of("motor.inspected", MotorInspected.class, Rows.put(MOTOR_INSPECTION)),
                FactKind.of("motor.removed", Removed.class, (tx, fact) -> {
                    Rows.remove(tx, MOTOR.ID, fact.id());
                    Rows.remove(tx, MOTOR_INSPECTION.MOTOR_ID, fact.id());
                    Rows.remove(tx, MOTOR_NOW.MOTOR_ID, fact.id());
                    Rows.remove(tx, MOTOR_PLACE.MOTOR_ID, fact.id());
                }));
    }
}
