package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY;

import java.util.List;
import java.util.Optional;
import org.skeinday.contest.EntryAdded;
import org.skeinday.platform.db.Tx;

/** Reads entries. */
public final class EntryStore {
    private EntryStore() {}

    /** By name. */
    public static List<EntryAdded> ofEvent(Tx tx, String eventId) {
        return tx.sql()
                .selectFrom(CONTEST_ENTRY)
                .where(CONTEST_ENTRY.EVENT_ID.eq(eventId))
                .orderBy(CONTEST_ENTRY.NAME)
                .fetchInto(EntryAdded.class);
    }

    public static Optional<EntryAdded> find(Tx tx, String id) {
        return tx.sql().selectFrom(CONTEST_ENTRY).where(CONTEST_ENTRY.ID.eq(id)).fetchOptionalInto(EntryAdded.class);
    }
}
