package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_AT_HAND;
import static org.skeinday.platform.db.schema.Tables.CONTEST_EVENT;

import java.util.List;
import java.util.Optional;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.platform.db.Tx;

/** Reads events. */
public final class EventStore {
    private EventStore() {}

    /** By day, then name. */
    public static List<EventAdded> all(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_EVENT)
                .orderBy(CONTEST_EVENT.DAY, CONTEST_EVENT.NAME)
                .fetchInto(EventAdded.class);
    }

    /** What is prepared for and flown: the event that somebody chose, else the last day that is no practice. */
    public static Optional<EventAdded> next(Tx tx) {
        return tx.sql()
                .select(CONTEST_EVENT.fields())
                .from(CONTEST_EVENT)
                .join(CONTEST_AT_HAND)
                .on(CONTEST_AT_HAND.EVENT_ID.eq(CONTEST_EVENT.ID))
                .where(CONTEST_EVENT.KIND.ne(DayKind.PRACTICE.word()))
                .fetchOptionalInto(EventAdded.class)
                .or(() -> last(tx));
    }

    private static Optional<EventAdded> last(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_EVENT)
                .where(CONTEST_EVENT.KIND.ne(DayKind.PRACTICE.word()))
                .orderBy(CONTEST_EVENT.DAY.desc(), CONTEST_EVENT.NAME.desc())
                .limit(1)
                .fetchOptionalInto(EventAdded.class);
    }

    public static Optional<EventAdded> find(Tx tx, String id) {
        return tx.sql().selectFrom(CONTEST_EVENT).where(CONTEST_EVENT.ID.eq(id)).fetchOptionalInto(EventAdded.class);
    }
}
