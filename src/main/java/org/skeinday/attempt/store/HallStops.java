package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT_HALL_STOP;

import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.HallResumed;
import org.skeinday.attempt.HallStopped;
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

    /** That lasts now. */
    public static Optional<HallStopped> now(Tx tx, String event) {
        return tx.sql()
                .selectFrom(ATTEMPT_HALL_STOP)
                .where(ATTEMPT_HALL_STOP.EVENT_ID.eq(event).and(ATTEMPT_HALL_STOP.RESUMED_AT_MS.isNull()))
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
