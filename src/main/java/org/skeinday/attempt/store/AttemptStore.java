package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_AIM;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_JUDGED;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_NOTE;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_QUIET;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAimed;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.AttemptWound;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.State;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.AttemptRecord;

/** Reads attempts, what is wanted and noted of them, and when it was quiet; their watches are in {@link WatchStore}. */
public final class AttemptStore {
    private AttemptStore() {}

    /** By entry and number. */
    public static List<AttemptNow> ofEvent(Tx tx, String eventId) {
        List<AttemptRecord> rows = tx.sql()
                .selectFrom(ATTEMPT)
                .where(ATTEMPT.EVENT_ID.eq(eventId))
                .orderBy(ATTEMPT.ENTRY_ID, ATTEMPT.NUMBER)
                .fetch();
        Map<String, AttemptNumber> numbers = AttemptNumbers.of(tx, rows);
        return rows.stream().map(r -> value(r, numbers)).toList();
    }

    public static Optional<AttemptNow> find(Tx tx, String id) {
        List<AttemptRecord> ofEntry = ofEntry(tx, id);
        return ofEntry.stream()
                .filter(r -> r.getId().equals(id))
                .findFirst()
                .map(r -> value(r, AttemptNumbers.of(tx, ofEntry)));
    }

    /** What is wanted of this attempt's wind; nothing when nobody said so. */
    public static AttemptAimed aim(Tx tx, String attempt) {
        return tx.sql()
                .selectFrom(ATTEMPT_AIM)
                .where(ATTEMPT_AIM.ATTEMPT_ID.eq(attempt))
                .fetchOptionalInto(AttemptAimed.class)
                .orElseGet(() -> AttemptAimed.nothing(attempt));
    }

    /** What was wanted of this entry's last attempt that somebody set it for: wanted again until somebody says otherwise. */
    public static Optional<AttemptAimed> lastAim(Tx tx, String entry) {
        return tx.sql()
                .select(ATTEMPT_AIM.fields())
                .from(ATTEMPT_AIM)
                .join(ATTEMPT)
                .on(ATTEMPT.ID.eq(ATTEMPT_AIM.ATTEMPT_ID))
                .where(ATTEMPT.ENTRY_ID.eq(entry))
                .orderBy(ATTEMPT.NUMBER.desc())
                .limit(1)
                .fetchOptionalInto(AttemptAimed.class);
    }

    /** The attempt of this event called last among those that the device has a watch in. */
    public static Optional<AttemptNow> lastTimedBy(Tx tx, String eventId, String device) {
        return tx.sql()
                .selectFrom(ATTEMPT)
                .where(ATTEMPT.EVENT_ID
                        .eq(eventId)
                        .and(ATTEMPT.ID.in(DSL.select(ATTEMPT_WATCH.ATTEMPT_ID)
                                .from(ATTEMPT_WATCH)
                                .where(ATTEMPT_WATCH.DEVICE.eq(device)))))
                .orderBy(ATTEMPT.CALLED_AT_MS.desc().nullsLast(), ATTEMPT.ENTRY_ID.desc(), ATTEMPT.NUMBER.desc())
                .limit(1)
                .fetchOptional(ATTEMPT.ID)
                .flatMap(id -> find(tx, id));
    }

    /** Where an attempt stood before it was released. */
    public static State stateBeforeRelease(Tx tx, String attemptId) {
        return tx.sql()
                .selectFrom(ATTEMPT)
                .where(ATTEMPT.ID.eq(attemptId))
                .fetchSingle(r -> r.getHoldingAtMs() != null
                        ? State.HOLDING
                        : r.getWindingAtMs() != null ? State.WINDING : State.CALLED);
    }

    /** Flights that say nothing, or touched something, by attempt. */
    public static List<FlightJudged> flightsJudged(Tx tx) {
        return tx.sql()
                .selectFrom(ATTEMPT_JUDGED)
                .orderBy(ATTEMPT_JUDGED.ATTEMPT_ID)
                .fetchInto(FlightJudged.class);
    }

    /** What was noted of winds and flights, by attempt. */
    public static List<AttemptNoted> notes(Tx tx) {
        return tx.sql()
                .selectFrom(ATTEMPT_NOTE)
                .orderBy(ATTEMPT_NOTE.ATTEMPT_ID)
                .fetchInto(AttemptNoted.class);
    }

    /** Of one attempt; blank when nothing was noted. */
    public static AttemptNoted note(Tx tx, String attempt) {
        return tx.sql()
                .selectFrom(ATTEMPT_NOTE)
                .where(ATTEMPT_NOTE.ATTEMPT_ID.eq(attempt))
                .fetchOptionalInto(AttemptNoted.class)
                .orElseGet(() -> AttemptNoted.blank(attempt));
    }

    /** What its wind came to; empty until the turns are known. */
    public static Optional<AttemptWound> wound(Tx tx, String attempt) {
        return tx.sql()
                .select(
                        ATTEMPT.ID,
                        ATTEMPT.STOP_COUNT_CRANK_TURNS,
                        ATTEMPT.LAUNCH_TORQUE_NMM,
                        ATTEMPT.LAUNCH_TORQUE_TYPED)
                .from(ATTEMPT)
                .where(ATTEMPT.ID.eq(attempt).and(ATTEMPT.STOP_COUNT_CRANK_TURNS.isNotNull()))
                .fetchOptionalInto(AttemptWound.class);
    }

    /** When it was quiet, by beginning. */
    public static List<Quiet> quiet(Tx tx) {
        return tx.sql()
                .selectFrom(ATTEMPT_QUIET)
                .orderBy(ATTEMPT_QUIET.FROM_MS, ATTEMPT_QUIET.ATTEMPT_ID)
                .fetchInto(Quiet.class);
    }

    /** Since when nobody may be helped just now, the first of them; empty when all may. */
    public static Optional<Quiet> quietNow(Tx tx) {
        return tx.sql()
                .selectFrom(ATTEMPT_QUIET)
                .where(ATTEMPT_QUIET.TO_MS.isNull())
                .orderBy(ATTEMPT_QUIET.FROM_MS, ATTEMPT_QUIET.ATTEMPT_ID)
                .limit(1)
                .fetchOptionalInto(Quiet.class);
    }

    /** The quiet that lasts now, of this attempt. */
    public static Optional<Quiet> quietOf(Tx tx, String attempt) {
        return tx.sql()
                .selectFrom(ATTEMPT_QUIET)
                .where(ATTEMPT_QUIET.ATTEMPT_ID.eq(attempt).and(ATTEMPT_QUIET.TO_MS.isNull()))
                .fetchOptionalInto(Quiet.class);
    }

    /** All attempts as they stand, in the form in which a file brings them. */
    public static List<AttemptImported> asImported(Tx tx) {
        return tx.sql()
                .select(
                        ATTEMPT.ID,
                        ATTEMPT.EVENT_ID,
                        ATTEMPT.ENTRY_ID,
                        ATTEMPT.NUMBER,
                        ATTEMPT.MODEL_ID,
                        ATTEMPT.MOTOR_ID,
                        ATTEMPT.STATE,
                        ATTEMPT.CALLED_AT_MS,
                        ATTEMPT.WINDING_AT_MS,
                        ATTEMPT.HOLDING_AT_MS,
                        ATTEMPT.RELEASED_AT_MS,
                        ATTEMPT.LANDED_AT_MS,
                        ATTEMPT.CLOSED_AT_MS,
                        ATTEMPT.STOP_COUNT_CRANK_TURNS,
                        ATTEMPT.LAUNCH_TORQUE_NMM,
                        ATTEMPT.LAUNCH_TORQUE_TYPED,
                        ATTEMPT.OFFICIAL_MS,
                        ATTEMPT.VOID_REASON,
                        ATTEMPT.FLOWN_AGAIN)
                .from(ATTEMPT)
                .orderBy(ATTEMPT.ENTRY_ID, ATTEMPT.NUMBER)
                .fetchInto(AttemptImported.class);
    }

    private static AttemptNow.@Nullable Window flewIn(AttemptRecord r) {
        Long opens = r.getWindowOpensMs();
        Long closes = r.getWindowClosesMs();
        return opens == null || closes == null ? null : new AttemptNow.Window(opens, closes);
    }

    /** It with the others of its entry: those before it make its number. */
    static List<AttemptRecord> ofEntry(Tx tx, String attempt) {
        return tx.sql()
                .selectFrom(ATTEMPT)
                .where(ATTEMPT.ENTRY_ID.in(
                        DSL.select(ATTEMPT.ENTRY_ID).from(ATTEMPT).where(ATTEMPT.ID.eq(attempt))))
                .orderBy(ATTEMPT.NUMBER)
                .fetch();
    }

    /** @param numbers of these attempts, as {@link AttemptNumbers} counts them */
    static AttemptNow value(AttemptRecord r, Map<String, AttemptNumber> numbers) {
        return new AttemptNow(
                r.getId(),
                r.getEventId(),
                r.getEntryId(),
                Objects.requireNonNull(numbers.get(r.getId())),
                r.getModelId(),
                r.getMotorId(),
                State.of(r.getState()),
                r.getCalledAtMs(),
                r.getReleasedAtMs(),
                r.getOfficialMs(),
                r.getHow(),
                r.getVoidReason(),
                r.getLandedAtMs(),
                r.getClosedAtMs(),
                r.getFlownAgain(),
                flewIn(r),
                AloftStore.value(r),
                VerdictStore.value(r));
    }
}
