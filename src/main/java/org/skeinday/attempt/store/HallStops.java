package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT_HALL_STOP;

import java.util.List;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.impl.DSL;
import org.skeinday.attempt.HallResumed;
import org.skeinday.attempt.HallStopped;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** When the hall stood still. */
public final class HallStops {
    private HallStops() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("hall.stopped", HallStopped.class, HallStops::stopped),
                FactKind.of("hall.resumed", HallResumed.class, HallStops::resumed));
    }

    private static void stopped(Tx tx, HallStopped fact) {
        Rows.into(ATTEMPT_HALL_STOP).accept(tx, fact);
        HallWindows.keep(tx, fact);
    }

    private static void resumed(Tx tx, HallResumed fact) {
        Rows.set(tx, ATTEMPT_HALL_STOP.ID, fact.id(), new Rows.Value<>(ATTEMPT_HALL_STOP.RESUMED_AT_MS, fact.atMs()));
    }

    /** That lasts now, whatever people work on: the event at hand, or practice without one. */
    public static Optional<HallStopped> now(Tx tx) {
        return EventStore.next(tx).map(event -> now(tx, event.id())).orElseGet(() -> first(tx, DSL.noCondition()));
    }

    /** That lasts now for this event: its own, or one from before anybody prepared an event. */
    public static Optional<HallStopped> now(Tx tx, String event) {
        return first(tx, ATTEMPT_HALL_STOP.EVENT_ID.in(event, HallStopped.PRACTICE));
    }

    private static Optional<HallStopped> first(Tx tx, Condition which) {
        return tx.sql()
                .selectFrom(ATTEMPT_HALL_STOP)
                .where(which.and(ATTEMPT_HALL_STOP.RESUMED_AT_MS.isNull()))
                .orderBy(ATTEMPT_HALL_STOP.AT_MS)
                .limit(1)
                .fetchOptionalInto(HallStopped.class);
    }

    /** All of a day, in their order. */
    public static List<HallStopped> ofEvent(Tx tx, String event) {
        return tx.sql()
                .selectFrom(ATTEMPT_HALL_STOP)
                .where(ATTEMPT_HALL_STOP.EVENT_ID.eq(event))
                .orderBy(ATTEMPT_HALL_STOP.AT_MS)
                .fetchInto(HallStopped.class);
    }
}
