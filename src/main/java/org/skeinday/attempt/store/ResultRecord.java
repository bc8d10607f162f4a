package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_COLLISION;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_PROTEST;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_REOPENED;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_RESULT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_SIGNATURE;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jooq.Condition;
import org.jooq.Record1;
import org.jooq.Select;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptReopened;
import org.skeinday.attempt.AttemptSigned;
import org.skeinday.attempt.Collision;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.Signatures;
import org.skeinday.attempt.Timed;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Removed;

/** What became of results: signed, re-opened, protested, chosen after a collision; and every one that there ever was. */
public final class ResultRecord {
    private ResultRecord() {}

    static List<FactKind> kinds() {
        return List.of(
                FactKind.of("attempt.collided", Collision.class, Rows.put(ATTEMPT_COLLISION)),
                FactKind.of(
                        "attempt.no-collision",
                        Removed.class,
                        (tx, fact) -> Rows.remove(tx, ATTEMPT_COLLISION.ATTEMPT_ID, fact.id())),
                FactKind.of("attempt.signed", AttemptSigned.class, Rows.into(ATTEMPT_SIGNATURE)),
                FactKind.of("attempt.protested", Protest.class, Rows.put(ATTEMPT_PROTEST)),
                FactKind.of("attempt.reopened", AttemptReopened.class, ResultRecord::reopened));
    }

    private static void reopened(Tx tx, AttemptReopened fact) {
        Rows.into(ATTEMPT_REOPENED).accept(tx, fact);
        tx.sql()
                .update(ATTEMPT_SIGNATURE)
                .set(ATTEMPT_SIGNATURE.OUTDATED, true)
                .where(ATTEMPT_SIGNATURE.ATTEMPT_ID.eq(fact.attemptId()))
                .execute();
        Rows.remove(tx, ATTEMPT_COLLISION.ATTEMPT_ID, fact.attemptId());
        VerdictStore.forget(tx, fact.attemptId());
        TimesDecided.forget(tx, fact.attemptId());
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.STATE, org.skeinday.attempt.State.LANDED.word())
                .setNull(ATTEMPT.CLOSED_AT_MS)
                .setNull(ATTEMPT.OFFICIAL_MS)
                .setNull(ATTEMPT.HOW)
                .setNull(ATTEMPT.VOID_REASON)
                .set(ATTEMPT.FLOWN_AGAIN, false)
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
                        ATTEMPT_RESULT.PERSON_ID,
                        ATTEMPT_RESULT.SLOTS)
                .from(ATTEMPT_RESULT)
                .where(ATTEMPT_RESULT.ATTEMPT_ID.eq(attempt))
                .orderBy(ATTEMPT_RESULT.NUMBER)
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

    /** Given to the result that stands. */
    public static Signatures signatures(Tx tx, String attempt) {
        return Signatures.of(slots(tx, attempt), given(tx, ATTEMPT_SIGNATURE.ATTEMPT_ID.eq(attempt)));
    }

    /** How many signatures are still owed, by attempt that ever had a time: two queries. */
    static Map<String, Integer> missing(Tx tx, Select<Record1<String>> attempts, Map<String, Timed> timed) {
        Map<String, List<AttemptSigned>> given = given(tx, ATTEMPT_SIGNATURE.ATTEMPT_ID.in(attempts)).stream()
                .collect(Collectors.groupingBy(AttemptSigned::attemptId));
        Map<String, Integer> missing = new HashMap<>();
        tx.sql()
                .select(ATTEMPT_RESULT.ATTEMPT_ID, ATTEMPT_RESULT.SLOTS)
                .from(ATTEMPT_RESULT)
                .where(ATTEMPT_RESULT.ATTEMPT_ID.in(attempts))
                .orderBy(ATTEMPT_RESULT.NUMBER) // the last of an attempt holds
                .forEach(r -> missing.put(
                        r.value1(),
                        Signatures.of(
                                        slots(r.value2(), readings(timed, r.value1())),
                                        given.getOrDefault(r.value1(), List.of()))
                                .missing()
                                .size()));
        return missing;
    }

    private static List<ReadingTaken> readings(Map<String, Timed> timed, String attempt) {
        Timed of = timed.get(attempt);
        return of == null ? List.of() : of.readings();
    }

    private static List<AttemptSigned> given(Tx tx, Condition which) {
        return tx.sql()
                .select(
                        ATTEMPT_SIGNATURE.ID,
                        ATTEMPT_SIGNATURE.ATTEMPT_ID,
                        ATTEMPT_SIGNATURE.SIGNED_AS,
                        ATTEMPT_SIGNATURE.PERSON_ID,
                        ATTEMPT_SIGNATURE.DEVICE,
                        ATTEMPT_SIGNATURE.AT_MS)
                .from(ATTEMPT_SIGNATURE)
                .where(which.and(ATTEMPT_SIGNATURE.OUTDATED.isFalse()))
                .orderBy(ATTEMPT_SIGNATURE.AT_MS, ATTEMPT_SIGNATURE.ID)
                .fetchInto(AttemptSigned.class);
    }

    /** Of the last result; of one made before they were kept, all watches with a reading. */
    private static List<Integer> slots(Tx tx, String attempt) {
        List<AttemptClosed> results = results(tx, attempt);
        String slots =
                results.isEmpty() ? null : results.get(results.size() - 1).slots();
        return slots(slots, WatchStore.readings(tx, attempt));
    }

    private static List<Integer> slots(@Nullable String slots, List<ReadingTaken> readings) {
        return slots == null || slots.isEmpty()
                ? Readings.thatCount(readings).stream().map(ReadingTaken::slot).toList()
                : Arrays.stream(slots.split(",")).map(Integer::valueOf).toList();
    }
}
