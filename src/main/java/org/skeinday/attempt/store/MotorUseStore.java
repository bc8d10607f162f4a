package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT_RUN_BACK;

import java.util.List;
import org.jooq.exception.MappingException;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.TurnsRunBack;
import org.skeinday.attempt.WindingEvidence;
import org.skeinday.contest.store.EventStore;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.store.WindStore;

/** Reads what tells of windings: nine queries, however many there are. */
public final class MotorUseStore {
    private MotorUseStore() {}

    /** The uses of all motors. */
    public static MotorUses all(Tx tx) {
        return MotorUses.of(evidence(tx), MotorStore.all(tx), batches(tx));
    }

    /** With a K that cannot be none is as good as known: any turn counts as a use then, and no page waits for it. */
    private static List<BatchAdded> batches(Tx tx) {
        try {
            return BatchStore.all(tx);
        } catch (MappingException e) {
            return List.of();
        }
    }

    private static WindingEvidence evidence(Tx tx) {
        return new WindingEvidence(
                EventStore.all(tx),
                AttemptStore.asImported(tx),
                FlightStore.all(tx),
                WindStore.begun(tx),
                WindStore.counted(tx),
                tx.sql()
                        .selectFrom(ATTEMPT_RUN_BACK)
                        .orderBy(ATTEMPT_RUN_BACK.AT_MS, ATTEMPT_RUN_BACK.ID)
                        .fetchInto(TurnsRunBack.class),
                Stations.ratios(tx));
    }
}
