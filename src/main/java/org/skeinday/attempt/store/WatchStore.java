package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_READING;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH_JUDGED;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH_MARK;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Record1;
import org.jooq.Select;
import org.jooq.impl.DSL;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.JudgedReadings;
import org.skeinday.attempt.Marks;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.Seen;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.WatchJudged;
import org.skeinday.attempt.WatchMark;
import org.skeinday.attempt.WatchMarked;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.platform.db.Tx;

/** Reads who times an attempt, what the watches read, what else was pressed, and what the captain decided of it. */
public final class WatchStore {
    private static final Condition NOT_TAKEN_BACK =
            ATTEMPT_READING.TAKEN_BACK.isNull().or(ATTEMPT_READING.TAKEN_BACK.isFalse());
    /** Neither a mistake of its timekeeper's nor one of several of which a person chose another. */
    static final Condition STANDS =
            NOT_TAKEN_BACK.and(ATTEMPT_READING.SET_ASIDE.isNull().or(ATTEMPT_READING.SET_ASIDE.isFalse()));

    /** As {@link WatchTaken} has them. */
    private static final List<Field<?>> TAKEN = List.of(
            ATTEMPT_WATCH.ATTEMPT_ID,
            ATTEMPT_WATCH.SLOT,
            ATTEMPT_WATCH.DEVICE,
            ATTEMPT_WATCH.PERSON_ID,
            ATTEMPT_WATCH.TAKEN_MS,
            ATTEMPT_WATCH.ALLOWED);

    private WatchStore() {}

    /** Who has each timekeeper's place now. */
    public static List<WatchTaken> watches(Tx tx, String attemptId) {
        return watches(tx, ATTEMPT_WATCH.ATTEMPT_ID.eq(attemptId).and(ATTEMPT_WATCH.GIVEN_OVER.isFalse()));
    }

    /** The same of all attempts, by entry and number, in one query. */
    public static List<WatchTaken> watches(Tx tx) {
        return tx.sql()
                .select(TAKEN)
                .from(ATTEMPT_WATCH)
                .join(ATTEMPT)
                .on(ATTEMPT.ID.eq(ATTEMPT_WATCH.ATTEMPT_ID))
                .where(ATTEMPT_WATCH.GIVEN_OVER.isFalse())
                .orderBy(ATTEMPT.ENTRY_ID, ATTEMPT.NUMBER, ATTEMPT_WATCH.SLOT)
                .fetchInto(WatchTaken.class);
    }

    /** Who had which place in an event, on a device that joined: the attempt that was called last before all others. */
    public static List<WatchTaken> lastTaken(Tx tx, String eventId) {
        return tx.sql()
                .select(TAKEN)
                .from(ATTEMPT_WATCH)
                .join(ATTEMPT)
                .on(ATTEMPT.ID.eq(ATTEMPT_WATCH.ATTEMPT_ID))
                .where(ATTEMPT.EVENT_ID.eq(eventId))
                .and(ATTEMPT_WATCH.GIVEN_OVER.isFalse())
                .and(ATTEMPT_WATCH.DEVICE.ne("laptop"))
                .orderBy(
                        ATTEMPT.CALLED_AT_MS.desc().nullsLast(),
                        ATTEMPT_WATCH.TAKEN_MS.desc().nullsLast(),
                        ATTEMPT_WATCH.SLOT)
                .fetchInto(WatchTaken.class);
    }

    /** The places in an event that this device has or had before another took them over, the attempt called first before all others. */
    public static List<WatchTaken> ofDevice(Tx tx, String eventId, String device) {
        return watches(
                tx,
                ATTEMPT_WATCH
                        .DEVICE
                        .eq(device)
                        .and(ATTEMPT_WATCH.ATTEMPT_ID.in(
                                DSL.select(ATTEMPT.ID).from(ATTEMPT).where(ATTEMPT.EVENT_ID.eq(eventId)))));
    }

    /** The places that this device has or had before another took them over. */
    public static List<WatchTaken> everWatched(Tx tx, String attemptId, String device) {
        return watches(tx, ATTEMPT_WATCH.ATTEMPT_ID.eq(attemptId).and(ATTEMPT_WATCH.DEVICE.eq(device)));
    }

    private static List<WatchTaken> watches(Tx tx, Condition which) {
        return tx.sql()
                .select(TAKEN)
                .from(ATTEMPT_WATCH)
                .where(which)
                .orderBy(ATTEMPT_WATCH.SLOT)
                .fetchInto(WatchTaken.class);
    }

    /**
     * In the order of the timekeepers' places; within one, as they came in. Those that were corrected are there too,
     * landings that were taken back, and times of which another of the same watch was chosen, are not.
     */
    public static List<ReadingTaken> readings(Tx tx, String attemptId) {
        return readings(tx, ATTEMPT_READING.ATTEMPT_ID.eq(attemptId).and(STANDS));
    }

    /** Times of watches that have sent several, none as a correction of another and none left out: a person chooses, and may choose anew. */
    public static List<ReadingTaken> toChooseFrom(Tx tx, String attemptId) {
        var timed = new Timed(
                readings(tx, ATTEMPT_READING.ATTEMPT_ID.eq(attemptId).and(NOT_TAKEN_BACK)),
                judged(tx, attemptId),
                new Marks(List.of()));
        return Readings.severalOfOne(timed.readings().stream()
                .filter(reading -> !JudgedReadings.isAside(reading, timed))
                .toList());
    }

    /** The same with landings that were taken back and times that were set aside: for files and disputes. */
    public static List<ReadingTaken> allReadings(Tx tx, String attemptId) {
        return readings(tx, ATTEMPT_READING.ATTEMPT_ID.eq(attemptId));
    }

    /** The same of all attempts, by entry and number, in one query. */
    public static List<ReadingTaken> allReadings(Tx tx) {
        return tx.sql()
                .select(ATTEMPT_READING.fields())
                .from(ATTEMPT_READING)
                .join(ATTEMPT)
                .on(ATTEMPT.ID.eq(ATTEMPT_READING.ATTEMPT_ID))
                .orderBy(
                        ATTEMPT.ENTRY_ID,
                        ATTEMPT.NUMBER,
                        ATTEMPT_READING.SLOT,
                        ATTEMPT_READING.AT_MS.asc().nullsFirst(),
                        ATTEMPT_READING.ID)
                .fetch(WatchStore::reading);
    }

    /** Those of several attempts that were not taken back, by attempt: one query. @param attempts their ids */
    static Map<String, List<ReadingTaken>> readings(Tx tx, Select<Record1<String>> attempts) {
        return readings(tx, ATTEMPT_READING.ATTEMPT_ID.in(attempts).and(STANDS)).stream()
                .collect(Collectors.groupingBy(ReadingTaken::attemptId));
    }

    private static List<ReadingTaken> readings(Tx tx, Condition which) {
        return tx.sql()
                .selectFrom(ATTEMPT_READING)
                .where(which)
                .orderBy(ATTEMPT_READING.SLOT, ATTEMPT_READING.AT_MS.asc().nullsFirst(), ATTEMPT_READING.ID)
                .fetch(WatchStore::reading);
    }

    /** One that was set aside counts as little as one that was taken back, in files too. */
    static ReadingTaken reading(Record row) {
        return new ReadingTaken(
                row.get(ATTEMPT_READING.ID),
                row.get(ATTEMPT_READING.ATTEMPT_ID),
                row.get(ATTEMPT_READING.SLOT),
                row.get(ATTEMPT_READING.INSTRUMENT),
                row.get(ATTEMPT_READING.PERSON_ID),
                row.get(ATTEMPT_READING.DURATION_MS),
                row.get(ATTEMPT_READING.AT_MS),
                row.get(ATTEMPT_READING.CORRECTS),
                Boolean.TRUE.equals(row.get(ATTEMPT_READING.SET_ASIDE))
                        ? Boolean.TRUE
                        : row.get(ATTEMPT_READING.TAKEN_BACK),
                row.get(ATTEMPT_READING.PARTIAL));
    }

    /** What its timekeepers pressed beside the landing, without a release that was none and what came with it. */
    public static Marks marks(Tx tx, String attemptId) {
        return new Marks(
                marked(tx, ATTEMPT_WATCH_MARK.ATTEMPT_ID.eq(attemptId).and(ATTEMPT_WATCH_MARK.STALE.isFalse())));
    }

    /** The same of all attempts on which a watch marked a contact, by attempt. */
    public static Map<String, Marks> touched(Tx tx) {
        return touched(tx, DSL.select(ATTEMPT.ID).from(ATTEMPT));
    }

    /** The same of those attempts on which a watch marked a contact, by attempt. @param attempts their ids */
    static Map<String, Marks> touched(Tx tx, Select<Record1<String>> attempts) {
        Condition contact = ATTEMPT_WATCH_MARK.ATTEMPT_ID.in(DSL.select(ATTEMPT_WATCH_MARK.ATTEMPT_ID)
                .from(ATTEMPT_WATCH_MARK)
                .where(ATTEMPT_WATCH_MARK.WHAT.in(WatchMark.TOUCHED.word(), WatchMark.HELD.word())));
        Map<String, Marks> touched = new HashMap<>();
        marked(tx, contact.and(ATTEMPT_WATCH_MARK.ATTEMPT_ID.in(attempts)).and(ATTEMPT_WATCH_MARK.STALE.isFalse()))
                .stream()
                .collect(Collectors.groupingBy(WatchMarked::attemptId))
                .forEach((id, marks) -> touched.put(id, new Marks(marks)));
        return touched;
    }

    /** All of them one by one, in the order in which the record took them in. */
    public static List<WatchMarked> marked(Tx tx, String attemptId) {
        return marked(tx, ATTEMPT_WATCH_MARK.ATTEMPT_ID.eq(attemptId));
    }

    private static List<WatchMarked> marked(Tx tx, Condition which) {
        return tx.sql()
                .select(
                        ATTEMPT_WATCH_MARK.ID,
                        ATTEMPT_WATCH_MARK.ATTEMPT_ID,
                        ATTEMPT_WATCH_MARK.SLOT,
                        ATTEMPT_WATCH_MARK.WHAT,
                        ATTEMPT_WATCH_MARK.MS,
                        ATTEMPT_WATCH_MARK.ABOUT,
                        ATTEMPT_WATCH_MARK.AT_MS,
                        ATTEMPT_WATCH_MARK.BOUND_MS,
                        ATTEMPT_WATCH_MARK.PERSON_ID)
                .from(ATTEMPT_WATCH_MARK)
                .where(which)
                .orderBy(ATTEMPT_WATCH_MARK.NUMBER)
                .fetchInto(WatchMarked.class);
    }

    /** What the captain decided of this attempt's watches, as it came. */
    public static List<WatchJudged> judged(Tx tx, String attemptId) {
        return judged(tx, ATTEMPT_WATCH_JUDGED.ATTEMPT_ID.eq(attemptId));
    }

    private static List<WatchJudged> judged(Tx tx, Condition which) {
        return tx.sql()
                .selectFrom(ATTEMPT_WATCH_JUDGED)
                .where(which)
                .orderBy(ATTEMPT_WATCH_JUDGED.AT_MS, ATTEMPT_WATCH_JUDGED.ID)
                .fetchInto(WatchJudged.class);
    }

    /** Everything that is known of its watches. */
    public static Timed timed(Tx tx, String attemptId) {
        return new Timed(readings(tx, attemptId), judged(tx, attemptId), marks(tx, attemptId));
    }

    /** The same of several attempts, by attempt: three queries. @param attempts their ids */
    static Map<String, Timed> timed(Tx tx, Select<Record1<String>> attempts) {
        Map<String, List<ReadingTaken>> readings = readings(tx, attempts);
        Map<String, List<WatchJudged>> judged = judged(tx, ATTEMPT_WATCH_JUDGED.ATTEMPT_ID.in(attempts)).stream()
                .collect(Collectors.groupingBy(WatchJudged::attemptId));
        Map<String, List<WatchMarked>> marks =
                marked(tx, ATTEMPT_WATCH_MARK.ATTEMPT_ID.in(attempts).and(ATTEMPT_WATCH_MARK.STALE.isFalse())).stream()
                        .collect(Collectors.groupingBy(WatchMarked::attemptId));
        Map<String, Timed> timed = new HashMap<>();
        Stream.of(readings.keySet(), judged.keySet(), marks.keySet())
                .flatMap(Set::stream)
                .forEach(id -> timed.computeIfAbsent(
                        id,
                        one -> new Timed(
                                readings.getOrDefault(one, List.of()),
                                judged.getOrDefault(one, List.of()),
                                new Marks(marks.getOrDefault(one, List.of())))));
        return timed;
    }

    /** What a form about this attempt shows of it. */
    public static Seen seen(Tx tx, AttemptNow attempt) {
        int words = marked(tx, attempt.id()).size() + judged(tx, attempt.id()).size();
        return new Seen(attempt.state(), allReadings(tx, attempt.id()).size(), words);
    }
}
