package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_READING;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH;

import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.AttemptRecord;

/** Reads attempts, who times them, and their readings. */
public final class AttemptStore {
    private AttemptStore() {}

    /** By entry and number. */
    public static List<AttemptNow> ofEvent(Tx tx, String eventId) {
        return tx.sql()
                .selectFrom(ATTEMPT)
                .where(ATTEMPT.EVENT_ID.eq(eventId))
                .orderBy(ATTEMPT.ENTRY_ID, ATTEMPT.NUMBER)
                .fetch(AttemptStore::value);
    }

    public static Optional<AttemptNow> find(Tx tx, String id) {
        return tx.sql().selectFrom(ATTEMPT).where(ATTEMPT.ID.eq(id)).fetchOptional(AttemptStore::value);
    }

    /** Times this motor was taken into an attempt that reached winding: scrubbed ones count, as they were wound. */
    public static int windingsOf(Tx tx, String motorId) {
        return tx.sql().fetchCount(ATTEMPT, ATTEMPT.MOTOR_ID.eq(motorId).and(ATTEMPT.WINDING_AT_MS.isNotNull()));
    }

    public static List<WatchTaken> watches(Tx tx, String attemptId) {
        return tx.sql()
                .selectFrom(ATTEMPT_WATCH)
                .where(ATTEMPT_WATCH.ATTEMPT_ID.eq(attemptId))
                .orderBy(ATTEMPT_WATCH.SLOT)
                .fetchInto(WatchTaken.class);
    }

    /** In the order of the timekeepers' places; within one, as they came in. */
    public static List<ReadingTaken> readings(Tx tx, String attemptId) {
        return tx.sql()
                .selectFrom(ATTEMPT_READING)
                .where(ATTEMPT_READING.ATTEMPT_ID.eq(attemptId))
                .orderBy(ATTEMPT_READING.SLOT, ATTEMPT_READING.ID)
                .fetchInto(ReadingTaken.class);
    }

    private static AttemptNow value(AttemptRecord r) {
        return new AttemptNow(
                r.getId(),
                r.getEventId(),
                r.getEntryId(),
                r.getNumber(),
                r.getModelId(),
                r.getMotorId(),
                State.of(r.getState()),
                r.getCalledAtMs(),
                r.getReleasedAtMs(),
                r.getOfficialMs(),
                r.getHow(),
                r.getVoidReason());
    }
}
