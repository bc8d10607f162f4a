package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_STATION;

import java.util.List;
import org.skeinday.contest.StationAdded;
import org.skeinday.platform.db.Tx;

/** Reads winding places. */
public final class StationStore {
    private StationStore() {}

    /** By name. */
    public static List<StationAdded> all(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_STATION)
                .orderBy(CONTEST_STATION.NAME)
                .fetchInto(StationAdded.class);
    }
}
