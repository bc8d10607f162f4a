package org.skeinday.motor.store;

import static org.skeinday.platform.db.schema.Tables.MOTOR_BATCH;

import java.util.List;
import java.util.Optional;
import org.skeinday.motor.BatchAdded;
import org.skeinday.platform.db.Tx;

/** Reads batches. */
public final class BatchStore {
    private BatchStore() {}

    /** By name. */
    public static List<BatchAdded> all(Tx tx) {
        return tx.sql().selectFrom(MOTOR_BATCH).orderBy(MOTOR_BATCH.NAME).fetchInto(BatchAdded.class);
    }

    public static Optional<BatchAdded> find(Tx tx, String id) {
        return tx.sql().selectFrom(MOTOR_BATCH).where(MOTOR_BATCH.ID.eq(id)).fetchOptionalInto(BatchAdded.class);
    }
}
