package org.skeinday.motor.store;

import static org.skeinday.platform.db.schema.Tables.MOTOR;

import java.util.List;
import java.util.Optional;
import org.skeinday.motor.MotorAdded;
import org.skeinday.platform.db.Tx;

/** Reads motors. */
public final class MotorStore {
    private MotorStore() {}

    /** By tag. */
    public static List<MotorAdded> all(Tx tx) {
        return tx.sql().selectFrom(MOTOR).orderBy(MOTOR.TAG).fetchInto(MotorAdded.class);
    }

    public static Optional<MotorAdded> find(Tx tx, String id) {
        return tx.sql().selectFrom(MOTOR).where(MOTOR.ID.eq(id)).fetchOptionalInto(MotorAdded.class);
    }
}
