package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_READING;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH_JUDGED;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH_MARK;

import java.util.List;
import org.jooq.impl.DSL;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.WatchJudged;
import org.skeinday.attempt.WatchLeft;
import org.skeinday.attempt.WatchMark;
import org.skeinday.attempt.WatchMarked;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** Kinds of fact of an attempt's watches: who has them, what is pressed beside the landing, what a person decides of them. */
final class WatchFacts {
    private WatchFacts() {}

    static List<FactKind> kinds() {
        return List.of(
                FactKind.of("watch.taken", WatchTaken.class, WatchFacts::watchTaken),
                FactKind.of("watch.left", WatchLeft.class, WatchFacts::watchLeft),
                FactKind.of("watch.marked", WatchMarked.class, WatchFacts::watchMarked),
                FactKind.of("watch.judged", WatchJudged.class, WatchFacts::judged));
    }

    /** Whoever had the place before gives it over; a device that takes its own place back has it again. */
    private static void watchTaken(Tx tx, WatchTaken fact) {
        var place = ATTEMPT_WATCH.ATTEMPT_ID.eq(fact.attemptId()).and(ATTEMPT_WATCH.SLOT.eq(fact.slot()));
        tx.sql()
                .update(ATTEMPT_WATCH)
                .set(ATTEMPT_WATCH.GIVEN_OVER, true)
                .where(place)
                .execute();
        tx.sql()
                .deleteFrom(ATTEMPT_WATCH)
                .where(place.and(ATTEMPT_WATCH.DEVICE.eq(fact.device())))
                .execute();
        Rows.into(ATTEMPT_WATCH).accept(tx, fact);
    }

    private static void watchLeft(Tx tx, WatchLeft fact) {
        tx.sql()
                .deleteFrom(ATTEMPT_WATCH)
                .where(ATTEMPT_WATCH.ATTEMPT_ID.eq(fact.attemptId()))
                .and(ATTEMPT_WATCH.SLOT.eq(fact.slot()))
                .and(ATTEMPT_WATCH.DEVICE.eq(fact.device()))
                .execute();
    }

    /** A landing that was a mistake is kept, and read no more. */
    private static void watchMarked(Tx tx, WatchMarked fact) {
        Rows.into(ATTEMPT_WATCH_MARK).accept(tx, fact);
        if (fact.is(WatchMark.STILL_FLYING) && fact.about() != null) {
            tx.sql()
                    .update(ATTEMPT_READING)
                    .set(ATTEMPT_READING.TAKEN_BACK, true)
                    .where(ATTEMPT_READING
                            .ID
                            .eq(fact.about())
                            .and(ATTEMPT_READING.ATTEMPT_ID.eq(fact.attemptId()))
                            .and(ATTEMPT_READING.SLOT.eq(fact.slot())))
                    .and(ATTEMPT_READING.ATTEMPT_ID.in(DSL.select(ATTEMPT.ID)
                            .from(ATTEMPT)
                            .where(ATTEMPT.CLOSED_AT_MS.isNull()))) // of a closed one the result rests on it
                    .execute();
        }
    }

    /** Release and landing are those of the watches that count; of one watch, those of the reading that does. */
    private static void judged(Tx tx, WatchJudged fact) {
        Rows.into(ATTEMPT_WATCH_JUDGED).accept(tx, fact);
        if (fact.readingId() != null) {
            tx.sql()
                    .update(ATTEMPT_READING)
                    .set(ATTEMPT_READING.SET_ASIDE, DSL.field(ATTEMPT_READING.ID.ne(fact.readingId())))
                    .where(ATTEMPT_READING.ATTEMPT_ID.eq(fact.attemptId()))
                    .and(ATTEMPT_READING.SLOT.eq(fact.slot()))
                    .execute();
        }
        Timed timed = WatchStore.timed(tx, fact.attemptId());
        Readings.released(timed)
                .ifPresent(atMs ->
                        Rows.set(tx, ATTEMPT.ID, fact.attemptId(), new Rows.Value<>(ATTEMPT.RELEASED_AT_MS, atMs)));
        Readings.landed(timed)
                .ifPresent(atMs ->
                        Rows.set(tx, ATTEMPT.ID, fact.attemptId(), new Rows.Value<>(ATTEMPT.LANDED_AT_MS, atMs)));
    }
}
