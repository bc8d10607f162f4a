package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_RESULT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_SIGNATURE;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_TIME_DECIDED;

import java.util.List;
import org.jooq.Condition;
import org.skeinday.attempt.TimeDecided;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** What was decided of official times beside the watches. */
public final class TimesDecided {
    private TimesDecided() {}

    static List<FactKind> kinds() {
        return List.of(FactKind.of("attempt.time-decided", TimeDecided.class, TimesDecided::decided));
    }

    private static void decided(Tx tx, TimeDecided fact) {
        Rows.into(ATTEMPT_TIME_DECIDED).accept(tx, fact);
        tx.sql()
                .update(ATTEMPT_SIGNATURE)
                .set(ATTEMPT_SIGNATURE.OUTDATED, true)
                .where(ATTEMPT_SIGNATURE.ATTEMPT_ID.eq(fact.attemptId()))
                .execute();
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.OFFICIAL_MS, fact.officialMs())
                .set(ATTEMPT.HOW, fact.how())
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }

    /** What was opened again is decided anew. */
    static void forget(Tx tx, String attempt) {
        tx.sql()
                .update(ATTEMPT_TIME_DECIDED)
                .set(ATTEMPT_TIME_DECIDED.OUTDATED, true)
                .where(ATTEMPT_TIME_DECIDED.ATTEMPT_ID.eq(attempt))
                .execute();
    }

    /** Since the time was accepted last, the first one first. */
    public static List<TimeDecided> since(Tx tx, String attempt) {
        return decisions(tx, ATTEMPT_TIME_DECIDED.ATTEMPT_ID.eq(attempt).and(ATTEMPT_TIME_DECIDED.OUTDATED.isFalse()));
    }

    /** All that there ever were, the first one first. */
    public static List<TimeDecided> ever(Tx tx, String attempt) {
        return decisions(tx, ATTEMPT_TIME_DECIDED.ATTEMPT_ID.eq(attempt));
    }

    private static List<TimeDecided> decisions(Tx tx, Condition which) {
        return tx.sql()
                .select(
                        ATTEMPT_TIME_DECIDED.ID,
                        ATTEMPT_TIME_DECIDED.ATTEMPT_ID,
                        ATTEMPT_TIME_DECIDED.KIND,
                        ATTEMPT_TIME_DECIDED.AT_MS,
                        ATTEMPT_TIME_DECIDED.PERSON_ID,
                        ATTEMPT_TIME_DECIDED.DEVICE,
                        ATTEMPT_TIME_DECIDED.REASON,
                        ATTEMPT_TIME_DECIDED.MS,
                        ATTEMPT_TIME_DECIDED.PER_MILLE,
                        ATTEMPT_TIME_DECIDED.UNDOES,
                        ATTEMPT_TIME_DECIDED.WATCHES,
                        ATTEMPT_TIME_DECIDED.OFFICIAL_MS,
                        ATTEMPT_TIME_DECIDED.HOW)
                .from(ATTEMPT_TIME_DECIDED)
                .where(which)
                .orderBy(ATTEMPT_TIME_DECIDED.NUMBER)
                .fetchInto(TimeDecided.class);
    }

    /** Whether any flight of the event was ever official. */
    public static boolean anyOfficial(Tx tx, String event) {
        return tx.sql()
                .fetchExists(tx.sql()
                        .selectOne()
                        .from(ATTEMPT_RESULT)
                        .join(ATTEMPT)
                        .on(ATTEMPT.ID.eq(ATTEMPT_RESULT.ATTEMPT_ID))
                        .where(ATTEMPT.EVENT_ID.eq(event)));
    }
}
