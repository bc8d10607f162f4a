package org.skeinday.review.store;

import static org.skeinday.platform.db.schema.Tables.MOTOR;
import static org.skeinday.platform.db.schema.Tables.MOTOR_BATCH;
import static org.skeinday.platform.db.schema.Tables.MOTOR_STEP;
import static org.skeinday.platform.db.schema.Tables.REVIEW_AGED_BATCH;
import static org.skeinday.platform.db.schema.Tables.REVIEW_SEASON;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.NewSeason;

/** How old batches are, and what the last new season said of that. */
public final class BatchAges {
    private BatchAges() {}

    /** By name. A break that was taken back is none. */
    public static List<NewSeason.Batch> all(Tx tx) {
        Map<String, Long> broken = lastBreaks(tx);
        return BatchStore.all(tx).stream()
                .map(b -> new NewSeason.Batch(b.id(), b.name(), opened(b), day(broken.get(b.id()))))
                .toList();
    }

    private static Map<String, Long> lastBreaks(Tx tx) {
        return tx.sql()
                .select(MOTOR.BATCH_ID, DSL.max(MOTOR_STEP.AT_MS))
                .from(MOTOR_STEP)
                .join(MOTOR)
                .on(MOTOR.ID.eq(MOTOR_STEP.MOTOR_ID))
                .where(MOTOR_STEP.DEED.eq(MotorDeed.BREAK.word()).and(MOTOR_STEP.UNDONE.isFalse()))
                .groupBy(MOTOR.BATCH_ID)
                .fetchMap(MOTOR.BATCH_ID, DSL.max(MOTOR_STEP.AT_MS));
    }

    private static @Nullable LocalDate opened(BatchAdded batch) {
        String day = batch.openedDay();
        return day == null ? null : LocalDate.parse(day);
    }

    /** To the day: months are counted from it, so that the zone does not matter. */
    private static @Nullable LocalDate day(@Nullable Long ms) {
        return ms == null ? null : LocalDate.ofInstant(Instant.ofEpochMilli(ms), ZoneOffset.UTC);
    }

    public static boolean isBegun(Tx tx, LocalDate first) {
        return tx.sql().fetchExists(REVIEW_SEASON, REVIEW_SEASON.FIRST_DAY.eq(first.toString()));
    }

    /** Names of batches that had aged with a season and that nobody has broken a motor of since, by name. */
    public static List<String> toBeBroken(Tx tx) {
        Map<String, Long> broken = lastBreaks(tx);
        return tx
                .sql()
                .select(MOTOR_BATCH.ID, MOTOR_BATCH.NAME, REVIEW_AGED_BATCH.SINCE_DAY)
                .from(REVIEW_AGED_BATCH)
                .join(MOTOR_BATCH)
                .on(MOTOR_BATCH.ID.eq(REVIEW_AGED_BATCH.BATCH_ID))
                .orderBy(MOTOR_BATCH.NAME)
                .fetch()
                .stream()
                .filter(r -> {
                    LocalDate last = day(broken.get(r.value1()));
                    return last == null || last.isBefore(LocalDate.parse(r.value3()));
                })
                .map(r -> r.value2())
                .toList();
    }
}
