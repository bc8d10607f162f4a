package org.skeinday.prepare.web;

import java.time.Clock;
import java.time.ZoneId;
import java.util.Optional;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.action.ExchangeDayReader;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.record.ActStore;

/** What every page of Prepare works with. */
public record PrepareContext(ActStore record, FormActs forms, Page page, Clock clock) {
    /** Everything prepared, as it is now. */
    Day day() {
        return record.read(tx -> ExchangeDayReader.prepared(tx, record.people().names()));
    }

    /** What is prepared for: the event that every page is about. */
    Optional<EventAdded> atHand() {
        return record.read(EventStore::next);
    }

    ZoneId zone() {
        return clock.getZone();
    }
}
