package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_COLLISION;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_PROTEST;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_REOPENED;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_RESULT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_SIGNATURE;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptReopened;
import org.skeinday.attempt.AttemptSigned;
import org.skeinday.attempt.Collision;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.Signatures;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** What became of results: signed, re-opened, protested, chosen after a collision; and every one that there ever was. */
public final class ResultRecord {
    private ResultRecord() {}

    static List<FactKind> kinds() {
        return List.of(
                FactKind.of("attempt.collided", Collision.class, Rows.put(ATTEMPT_COLLISION)),
                FactKind.of("attempt.signed", AttemptSigned.class, Rows.into(ATTEMPT_SIGNATURE)),
                FactKind.of("attempt.protested", Protest.class, Rows.put(ATTEMPT_PROTEST)),
                FactKind.of("attempt.reopened", AttemptReopened.class, ResultRecord::reopened));
    }

    private static void reopened(Tx tx, AttemptReopened fact) {
        Rows.into(ATTEMPT_REOPENED).accept(tx, fact);
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.STATE, org.skeinday.attempt.State.LANDED.word())
                .setNull(ATTEMPT.CLOSED_AT_MS)
                .setNull(ATTEMPT.OFFICIAL_MS)
                .setNull(ATTEMPT.HOW)
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }

    public static Optional<Collision> collision(Tx tx, String attempt) {
        return tx.sql()
                .selectFrom(ATTEMPT_COLLISION)
                .where(ATTEMPT_COLLISION.ATTEMPT_ID.eq(attempt))
                .fetchOptionalInto(Collision.class);
    }

    /** All official times that an attempt had, the first one first. */
    public static List<AttemptClosed> results(Tx tx, String attempt) {
        return tx.sql()
                .select(
                        ATTEMPT_RESULT.ATTEMPT_ID,
                        ATTEMPT_RESULT.AT_MS,
                        ATTEMPT_RESULT.OFFICIAL_MS,
                        ATTEMPT_RESULT.HOW,
                        ATTEMPT_RESULT.PERSON_ID)
                .from(ATTEMPT_RESULT)
                .where(ATTEMPT_RESULT.ATTEMPT_ID.eq(attempt))
                .orderBy(ATTEMPT_RESULT.AT_MS)
                .fetchInto(AttemptClosed.class);
    }

    public static List<AttemptReopened> reopenings(Tx tx, String attempt) {
        return tx.sql()
                .selectFrom(ATTEMPT_REOPENED)
                .where(ATTEMPT_REOPENED.ATTEMPT_ID.eq(attempt))
                .orderBy(ATTEMPT_REOPENED.AT_MS)
                .fetchInto(AttemptReopened.class);
    }

    /** By attempt, the first one first. */
    public static Map<String, List<Protest>> protests(Tx tx) {
        return tx.sql()
                .selectFrom(ATTEMPT_PROTEST)
                .orderBy(ATTEMPT_PROTEST.AT_MS, ATTEMPT_PROTEST.ID)
                .fetchGroups(ATTEMPT_PROTEST.ATTEMPT_ID, Protest.class);
    }

    public static Optional<Protest> protest(Tx tx, String id) {
        return tx.sql()
                .selectFrom(ATTEMPT_PROTEST)
                .where(ATTEMPT_PROTEST.ID.eq(id))
                .fetchOptionalInto(Protest.class);
    }

    /** Given since the attempt was closed last. */
    public static Signatures signatures(Tx tx, String attempt) {
        Long closed = tx.sql()
                .select(ATTEMPT.CLOSED_AT_MS)
                .from(ATTEMPT)
                .where(ATTEMPT.ID.eq(attempt))
                .fetchOne(ATTEMPT.CLOSED_AT_MS);
        List<AttemptSigned> given = closed == null
                ? List.of()
                : tx.sql()
                        .selectFrom(ATTEMPT_SIGNATURE)
                        .where(ATTEMPT_SIGNATURE.ATTEMPT_ID.eq(attempt).and(ATTEMPT_SIGNATURE.AT_MS.ge(closed)))
                        .orderBy(ATTEMPT_SIGNATURE.AT_MS, ATTEMPT_SIGNATURE.ID)
                        .fetchInto(AttemptSigned.class);
        return Signatures.of(AttemptStore.readings(tx, attempt), given);
    }
}
