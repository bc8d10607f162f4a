package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_WINDOW;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.contest.WindowAdded;
import org.skeinday.platform.db.Tx;

/** Reads windows. */
public final class WindowStore {
    private WindowStore() {}

    /** In which an entry flies: its own, or the one for all. */
    public static Optional<WindowAdded> of(Tx tx, String eventId, String entryId) {
        return WindowAdded.of(ofEvent(tx, eventId), entryId);
    }

    /** Of all events, within each in the order in which they open. */
    public static Map<String, List<WindowAdded>> byEvent(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_WINDOW)
                .orderBy(CONTEST_WINDOW.OPENS_AT_MS, CONTEST_WINDOW.CLOSES_AT_MS, CONTEST_WINDOW.ID)
                .fetchGroups(CONTEST_WINDOW.EVENT_ID, WindowAdded.class);
    }

    /** In the order in which they open. */
    public static List<WindowAdded> ofEvent(Tx tx, String eventId) {
        return tx.sql()
                .selectFrom(CONTEST_WINDOW)
                .where(CONTEST_WINDOW.EVENT_ID.eq(eventId))
                .orderBy(CONTEST_WINDOW.OPENS_AT_MS, CONTEST_WINDOW.CLOSES_AT_MS, CONTEST_WINDOW.ID)
                .fetchInto(WindowAdded.class);
    }
}
