package org.skeinday.dayplan.web;

import java.time.ZoneId;
import java.util.List;
import java.util.function.UnaryOperator;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.web.PlanBeside;
import org.skeinday.contest.store.EventStore;
import org.skeinday.dayplan.store.PlanStore;
import org.skeinday.platform.db.Tx;

/** The plan of the day as the page Now shows it beside the next attempt. */
public final class DayBeside implements PlanBeside {
    private final UnaryOperator<String> nameOf;
    private final ZoneId zone;

    /** @param nameOf display name of a person's id */
    public DayBeside(UnaryOperator<String> nameOf, ZoneId zone) {
        this.nameOf = nameOf;
        this.zone = zone;
    }

    @Override
    public Said at(Tx tx, long nowMs) {
        return EventStore.next(tx)
                .filter(event -> PlanStore.inForce(tx, event.id()).isPresent()) // most days of guests have none
                .flatMap(event -> DayNow.read(tx, nowMs))
                .filter(day -> day.taken() != null && !day.day().attempts().isEmpty())
                .map(day -> new Said(
                        true,
                        AttemptStore.quietNow(tx).isPresent()
                                ? List.of()
                                : new DayPresenter(day, nameOf, zone, nowMs).slipped()))
                .orElse(Said.NOTHING);
    }
}
