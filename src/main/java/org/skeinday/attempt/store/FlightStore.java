package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.PRACTICE_FLIGHT;

import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.platform.db.Tx;

/** Reads flights outside any attempt. */
public final class FlightStore {
    private FlightStore() {}

    public static Optional<PracticeFlown> find(Tx tx, String id) {
        return tx.sql()
                .selectFrom(PRACTICE_FLIGHT)
                .where(PRACTICE_FLIGHT.ID.eq(id))
                .fetchOptionalInto(PracticeFlown.class);
    }

    /** In the order in which they were flown. */
    public static List<PracticeFlown> all(Tx tx) {
        return tx.sql()
                .selectFrom(PRACTICE_FLIGHT)
                .orderBy(PRACTICE_FLIGHT.FLOWN_AT_MS, PRACTICE_FLIGHT.ID)
                .fetchInto(PracticeFlown.class);
    }
}
