package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_STATION;

import java.util.List;
import java.util.Optional;
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

    /** The one with a meter, else the first there is. */
    public static Optional<StationAdded> atWork(Tx tx) {
        List<StationAdded> all = all(tx);
        return all.stream()
                .filter(s -> s.meter() != null)
                .findFirst()
                .or(() -> all.stream().findFirst());
    }
}
