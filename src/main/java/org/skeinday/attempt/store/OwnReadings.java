package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_READING;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH_JUDGED;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jooq.Field;
import org.jooq.Select;
import org.jooq.impl.DSL;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.WatchJudged;
import org.skeinday.platform.db.Tx;

/** What the watches read on all attempts of own entries, by attempt: one query, however many attempts. */
public final class OwnReadings {
    private OwnReadings() {}

    private static Select<?> own(Field<String> attempt) {
        return DSL.select(ATTEMPT.ID)
                .from(ATTEMPT)
                .join(CONTEST_ENTRY)
                .on(CONTEST_ENTRY.ID.eq(ATTEMPT.ENTRY_ID).and(CONTEST_ENTRY.OWN))
                .where(ATTEMPT.ID.eq(attempt));
    }

    /** Those that were not taken back, in the order of {@link WatchStore#readings}. */
    public static Map<String, List<ReadingTaken>> standing(Tx tx) {
        return tx
                .sql()
                .selectFrom(ATTEMPT_READING)
                .where(WatchStore.STANDS.and(DSL.exists(own(ATTEMPT_READING.ATTEMPT_ID))))
                .orderBy(ATTEMPT_READING.SLOT, ATTEMPT_READING.AT_MS.asc().nullsFirst(), ATTEMPT_READING.ID)
                .fetch(WatchStore::reading)
                .stream()
                .collect(Collectors.groupingBy(ReadingTaken::attemptId));
    }

    /** What the captain decided of watches, as it came. */
    public static Map<String, List<WatchJudged>> judged(Tx tx) {
        return tx
                .sql()
                .selectFrom(ATTEMPT_WATCH_JUDGED)
                .where(DSL.exists(own(ATTEMPT_WATCH_JUDGED.ATTEMPT_ID)))
                .orderBy(ATTEMPT_WATCH_JUDGED.AT_MS, ATTEMPT_WATCH_JUDGED.ID)
                .fetchInto(WatchJudged.class)
                .stream()
                .collect(Collectors.groupingBy(WatchJudged::attemptId));
    }
}
