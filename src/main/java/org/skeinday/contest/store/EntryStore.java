package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY_MOTOR;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY_TASK;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryMotor;
import org.skeinday.contest.EntryTask;
import org.skeinday.platform.db.Tx;

/** Reads entries. */
public final class EntryStore {
    private EntryStore() {}

    /** Of all events. */
    public static List<EntryAdded> all(Tx tx) {
        return tx.sql().selectFrom(CONTEST_ENTRY).orderBy(CONTEST_ENTRY.ID).fetchInto(EntryAdded.class);
    }

    /** Of all events, within each by name. */
    public static Map<String, List<EntryAdded>> byEvent(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_ENTRY)
                .orderBy(CONTEST_ENTRY.NAME)
                .fetchGroups(CONTEST_ENTRY.EVENT_ID, EntryAdded.class);
    }

    /** By name. */
    public static List<EntryAdded> ofEvent(Tx tx, String eventId) {
        return tx.sql()
                .selectFrom(CONTEST_ENTRY)
                .where(CONTEST_ENTRY.EVENT_ID.eq(eventId))
                .orderBy(CONTEST_ENTRY.NAME)
                .fetchInto(EntryAdded.class);
    }

    /** Which motors each entry has declared, of all events. */
    public static List<EntryMotor> motors(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_ENTRY_MOTOR)
                .orderBy(CONTEST_ENTRY_MOTOR.ENTRY_ID, CONTEST_ENTRY_MOTOR.MOTOR_ID)
                .fetchInto(EntryMotor.class);
    }

    /** The ids of the motors that one entry has declared. */
    public static List<String> motorsOf(Tx tx, String entry) {
        return tx.sql()
                .select(CONTEST_ENTRY_MOTOR.MOTOR_ID)
                .from(CONTEST_ENTRY_MOTOR)
                .where(CONTEST_ENTRY_MOTOR.ENTRY_ID.eq(entry))
                .fetch(CONTEST_ENTRY_MOTOR.MOTOR_ID);
    }

    /** Who does what for one entry. */
    public static List<EntryTask> tasksOf(Tx tx, String entry) {
        return tx.sql()
                .selectFrom(CONTEST_ENTRY_TASK)
                .where(CONTEST_ENTRY_TASK.ENTRY_ID.eq(entry))
                .fetchInto(EntryTask.class);
    }

    /** Who does what for which entry, of all events. */
    public static List<EntryTask> tasks(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_ENTRY_TASK)
                .orderBy(CONTEST_ENTRY_TASK.ENTRY_ID, CONTEST_ENTRY_TASK.TASK)
                .fetchInto(EntryTask.class);
    }

    public static Optional<EntryAdded> find(Tx tx, String id) {
        return tx.sql().selectFrom(CONTEST_ENTRY).where(CONTEST_ENTRY.ID.eq(id)).fetchOptionalInto(EntryAdded.class);
    }
}
