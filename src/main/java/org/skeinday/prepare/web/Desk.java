package org.skeinday.prepare.web;

import java.time.Clock;
import java.time.ZoneId;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.action.ReadDay;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.record.Record;

/** What every page of Prepare works with. */
public record Desk(Record record, FormActs forms, Page page, Clock clock) {
    /** Everything prepared, as it is now. */
    Day day() {
        return record.read(tx -> ReadDay.all(tx, record.people().names()));
    }

    ZoneId zone() {
        return clock.getZone();
    }
}
