package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_FLIGHT_RULES;

import java.util.List;
import org.skeinday.contest.FlightRules;
import org.skeinday.platform.db.Tx;

/** Reads which flights of events are official. */
public final class FlightRulesStore {
    private FlightRulesStore() {}

    public static List<FlightRules> all(Tx tx) {
        return tx.sql()
                .selectFrom(CONTEST_FLIGHT_RULES)
                .orderBy(CONTEST_FLIGHT_RULES.EVENT_ID)
                .fetchInto(FlightRules.class);
    }

    /** Of an event that says nothing, what then holds. */
    public static FlightRules of(Tx tx, String event) {
        return tx.sql()
                .selectFrom(CONTEST_FLIGHT_RULES)
                .where(CONTEST_FLIGHT_RULES.EVENT_ID.eq(event))
                .fetchOptionalInto(FlightRules.class)
                .orElseGet(() -> FlightRules.usual(event));
    }
}
