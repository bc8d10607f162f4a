package org.skeinday.prepare.web;

import java.time.Clock;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.store.FlownStore;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.device.web.PinGate;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.action.ExchangeDayReader;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.record.ActStore;

/** What every page of Prepare works with. */
public record PrepareContext(ActStore record, FormActs forms, Page page, Clock clock, PinGate pins, DoneBySaving did) {
    public PrepareContext(ActStore record, FormActs forms, Page page, Clock clock, PinGate pins) {
        this(record, forms, page, clock, pins, new DoneBySaving());
    }

    /** Everything prepared, as it is now. */
    Day day() {
        return record.read(tx -> ExchangeDayReader.prepared(tx, record.people().names()));
    }

    /** Own flights with what they are worth as evidence, by id. */
    Map<String, Flight> flown() {
        return record.read(FlownStore::own).stream().collect(Collectors.toMap(Flight::id, Function.identity()));
    }

    /** What is prepared for: the event that every page is about. */
    Optional<EventAdded> atHand() {
        return record.read(EventStore::next);
    }

    ZoneId zone() {
        return clock.getZone();
    }
}
