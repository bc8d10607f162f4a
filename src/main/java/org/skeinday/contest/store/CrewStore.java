package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_CREW;

import java.util.List;
import org.skeinday.contest.CrewAdded;
import org.skeinday.platform.db.Tx;

/** Reads who helps with what. Names are kept elsewhere. */
public final class CrewStore {
    private CrewStore() {}

    public static List<CrewAdded> all(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_CREW)
                .orderBy(CONTEST_CREW.PERSON_ID, CONTEST_CREW.EVENT_ID)
                .fetchInto(CrewAdded.class);
    }

    /** Those of this event and those of every event. */
    public static List<CrewAdded> ofEvent(Tx tx, String eventId) {
        return tx.sql()
                .selectFrom(CONTEST_CREW)
                .where(CONTEST_CREW.EVENT_ID.in(eventId, ""))
                .orderBy(CONTEST_CREW.PERSON_ID, CONTEST_CREW.EVENT_ID)
                .fetchInto(CrewAdded.class);
    }
}
