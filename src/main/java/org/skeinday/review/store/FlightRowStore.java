package org.skeinday.review.store;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.FlightRow;

/** Reads the flights of own entries and practice with everything that was noted of them: so many queries, however many flights. */
public final class FlightRowStore {
    private FlightRowStore() {}

    /**
     * In the order in which they were flown.
     *
     * @param zone of the hall
     * @param people person id to display name
     */
    public static List<FlightRow> all(Tx tx, ZoneId zone, Map<String, String> people) {
        var reader = new FlightRowReader(tx, zone, people);
        return FlownStore.own(tx).stream().map(reader::row).toList();
    }
}
