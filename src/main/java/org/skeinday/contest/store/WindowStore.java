package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_WINDOW;

import java.util.List;
import org.skeinday.contest.WindowAdded;
import org.skeinday.platform.db.Tx;

/** Reads windows. */
public final class WindowStore {
    private WindowStore() {}

    /** In the order in which they open. */
    public static List<WindowAdded> ofEvent(Tx tx, String eventId) {
        return tx.sql()
                .selectFrom(CONTEST_WINDOW)
                .where(CONTEST_WINDOW.EVENT_ID.eq(eventId))
                .orderBy(CONTEST_WINDOW.OPENS_AT_MS, CONTEST_WINDOW.CLOSES_AT_MS, CONTEST_WINDOW.ID)
                .fetchInto(WindowAdded.class);
    }
}
