package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_JUDGED;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_NOTE;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_STATION;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH_MARK;
import static org.skeinday.platform.db.schema.Tables.CONTEST_ENTRY;
import static org.skeinday.platform.db.schema.Tables.CONTEST_EVENT;
import static org.skeinday.platform.db.schema.Tables.CONTEST_STATION;
import static org.skeinday.platform.db.schema.Tables.MOTOR_STEP;
import static org.skeinday.platform.db.schema.Tables.WINDING_WIND;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Record1;
import org.jooq.Select;
import org.jooq.impl.DSL;
import org.skeinday.attempt.ElapsedDoubts;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.LateReadings;
import org.skeinday.attempt.Marks;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.State;
import org.skeinday.attempt.TimedBy;
import org.skeinday.attempt.WatchMark;
import org.skeinday.contest.DayKind;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.motor.MotorDeed;
import org.skeinday.platform.db.Tx;

/** Reads flights with what was counted of their winds: attempts and practice alike. */
public final class FlownStore {
    /** The ratio with which it was wound last, else that of the winder at its place then, else the event's. */
    private static final Field<Double> RATIO = DSL.coalesce(
            DSL.field(DSL.select(WINDING_WIND.RATIO)
                    .from(WINDING_WIND)
                    .where(WINDING_WIND.ATTEMPT_ID.eq(ATTEMPT.ID).and(WINDING_WIND.MOTOR_ID.eq(ATTEMPT.MOTOR_ID)))
                    .orderBy(WINDING_WIND.AT_MS.desc(), WINDING_WIND.ID.desc())
                    .limit(1)),
            DSL.field(DSL.select(PlacesThen.RATIO)
                    .from(ATTEMPT_STATION)
                    .leftJoin(CONTEST_STATION)
                    .on(CONTEST_STATION.ID.eq(ATTEMPT_STATION.STATION_ID))
                    .where(ATTEMPT_STATION.ATTEMPT_ID.eq(ATTEMPT.ID))),
            CONTEST_EVENT.WINDER_RATIO);

    /** Whether its motor broke between release and landing, and nobody has found since that it had not. */
    private static final Field<Boolean> BROKE_ALOFT = DSL.field(DSL.exists(DSL.selectOne()
            .from(MOTOR_STEP)
            .where(MOTOR_STEP.MOTOR_ID.eq(ATTEMPT.MOTOR_ID))
            .and(MOTOR_STEP.DEED.eq(MotorDeed.BREAK.word()).and(MOTOR_STEP.UNDONE.isFalse()))
            .and(MOTOR_STEP.AT_MS.ge(ATTEMPT.RELEASED_AT_MS))
            .and(ATTEMPT.LANDED_AT_MS.isNull().or(MOTOR_STEP.AT_MS.le(ATTEMPT.LANDED_AT_MS)))));

    /** When the first watch saw it go, as far as its device knew the server's clock to a bound. */
    private static final Field<Long> SEEN_RELEASED = DSL.field(DSL.select(DSL.min(ATTEMPT_WATCH_MARK.AT_MS))
            .from(ATTEMPT_WATCH_MARK)
            .where(ATTEMPT_WATCH_MARK.ATTEMPT_ID.eq(ATTEMPT.ID))
            .and(ATTEMPT_WATCH_MARK.WHAT.eq(WatchMark.RELEASED.word()).and(ATTEMPT_WATCH_MARK.STALE.isFalse()))
            .and(ATTEMPT_WATCH_MARK.BOUND_MS.isNotNull()));

    private static final List<String> LEFT_THE_HAND = Stream.of(State.values())
            .filter(State::hasLeftTheHand)
            .map(State::word)
            .toList();

    private static final Comparator<Flight> AS_FLOWN =
            Comparator.comparingLong(Flight::atMs).thenComparing(Flight::id);

    private FlownStore() {}

    /** An attempt; empty before the release. */
    public static Optional<Flight> find(Tx tx, String attempt) {
        return attempts(tx, ATTEMPT.ID.eq(attempt)).stream().findFirst().map(flight -> among(tx, flight));
    }

    /** An attempt that was released, or a practice flight. */
    public static Optional<Flight> any(Tx tx, String id) {
        return find(tx, id).or(() -> FlightStore.find(tx, id).map(f -> among(tx, f.flight(EvidenceStore.of(tx, id)))));
    }

    /** Motor turns to a crank turn of an attempt, flown or not; empty for one that is not on record. */
    public static Optional<Double> ratio(Tx tx, String attempt) {
        return tx.sql()
                .select(RATIO.as("ratio"))
                .from(ATTEMPT)
                .join(CONTEST_EVENT)
                .on(CONTEST_EVENT.ID.eq(ATTEMPT.EVENT_ID))
                .where(ATTEMPT.ID.eq(attempt))
                .fetchOptional(r -> r.value1());
    }

    /** Held against the flights of its model. */
    private static Flight among(Tx tx, Flight flight) {
        String model = flight.modelId();
        return (model == null ? new FlightDoubts(tx).doubting(List.of(flight)) : ofModel(tx, model))
                .stream().filter(f -> f.id().equals(flight.id())).findFirst().orElse(flight);
    }

    /** With this model, in the order in which they were flown. */
    public static List<Flight> ofModel(Tx tx, String model) {
        return new FlightDoubts(tx)
                .doubting(Stream.concat(
                                attempts(tx, ATTEMPT.MODEL_ID.eq(model)).stream(),
                                practised(tx).filter(f -> model.equals(f.modelId())))
                        .sorted(AS_FLOWN)
                        .toList());
    }

    /** The attempts of an event that were released, the last first; nothing of them is held against others. */
    public static List<Flight> ofEvent(Tx tx, String event) {
        List<Flight> flown = new ArrayList<>(attempts(tx, ATTEMPT.EVENT_ID.eq(event)));
        flown.sort(Comparator.comparingLong(Flight::atMs).reversed());
        return flown;
    }

    /** Attempts of own entries that were released, and practice, in the order in which they were flown: so many queries, however many flights. */
    public static List<Flight> own(Tx tx) {
        Condition own = ATTEMPT.ENTRY_ID.in(
                DSL.select(CONTEST_ENTRY.ID).from(CONTEST_ENTRY).where(CONTEST_ENTRY.OWN));
        return new FlightDoubts(tx)
                .doubting(Stream.concat(attempts(tx, own).stream(), practised(tx))
                        .sorted(AS_FLOWN)
                        .toList());
    }

    private static Stream<Flight> practised(Tx tx) {
        Map<String, ValueMarks> marks = EvidenceStore.byFlight(tx);
        return FlightStore.all(tx).stream().map(f -> f.flight(marks.getOrDefault(f.id(), ValueMarks.NONE)));
    }

    private static List<Flight> attempts(Tx tx, Condition which) {
        Select<Record1<String>> ids = DSL.select(ATTEMPT.ID).from(ATTEMPT).where(which);
        Map<String, Marks> touched = WatchStore.touched(tx, ids);
        Map<String, ValueMarks> marks = EvidenceStore.byFlight(tx);
        Map<String, List<ReadingTaken>> readings = WatchStore.readings(tx, ids);
        return tx.sql()
                .select(ATTEMPT.fields())
                .select(
                        RATIO.as("ratio"),
                        BROKE_ALOFT.as("broke"),
                        SEEN_RELEASED.as("seen"),
                        ATTEMPT_NOTE.PEAK_TORQUE_NMM,
                        ATTEMPT_NOTE.BACK_OFF_CRANK_TURNS,
                        ATTEMPT_NOTE.REMAINING_CRANK_TURNS,
                        ATTEMPT_NOTE.CONTACTS,
                        ATTEMPT_NOTE.FROM_PAPER,
                        CONTEST_EVENT.KIND,
                        ATTEMPT_JUDGED.ATTEMPT_ID,
                        ATTEMPT_JUDGED.REASON,
                        ATTEMPT_JUDGED.CONTACT_MS,
                        ATTEMPT_JUDGED.OF_CONTACT,
                        ATTEMPT_JUDGED.CONTACTS)
                .from(ATTEMPT)
                .join(CONTEST_EVENT)
                .on(CONTEST_EVENT.ID.eq(ATTEMPT.EVENT_ID))
                .leftJoin(ATTEMPT_NOTE)
                .on(ATTEMPT_NOTE.ATTEMPT_ID.eq(ATTEMPT.ID))
                .leftJoin(ATTEMPT_JUDGED)
                .on(ATTEMPT_JUDGED.ATTEMPT_ID.eq(ATTEMPT.ID))
                .where(which)
                .and(ATTEMPT.STATE.in(LEFT_THE_HAND))
                .orderBy(ATTEMPT.RELEASED_AT_MS, ATTEMPT.ID)
                .fetch(r -> {
                    String id = r.get(ATTEMPT.ID);
                    FlightEvidence worth = JudgedFlights.of(
                            r,
                            touched.get(id),
                            marks.getOrDefault(id, ValueMarks.NONE),
                            Boolean.TRUE.equals(r.get("broke", Boolean.class)));
                    List<ReadingTaken> read = LateReadings.without(
                            readings.getOrDefault(id, List.of()), r.get(ATTEMPT.STATE), r.get(ATTEMPT.CLOSED_AT_MS));
                    List<Doubted> passed =
                            ElapsedDoubts.official(r.get(ATTEMPT.OFFICIAL_MS), r.get("seen", Long.class), read).stream()
                                    .toList();
                    return flown(r, read, worth.doubting(passed));
                });
    }

    private static Flight flown(Record r, List<ReadingTaken> readings, FlightEvidence worth) {
        Integer stop = r.get(ATTEMPT.STOP_COUNT_CRANK_TURNS);
        var timed = new TimedBy(
                r.get(ATTEMPT.OFFICIAL_MS),
                DayKind.of(r.get(CONTEST_EVENT.KIND)) == DayKind.VISITING,
                Boolean.TRUE.equals(r.get(ATTEMPT_NOTE.FROM_PAPER)),
                readings);
        Long released = r.get(ATTEMPT.RELEASED_AT_MS);
        Long called = r.get(ATTEMPT.CALLED_AT_MS);
        return new Flight(
                r.get(ATTEMPT.ID),
                true,
                r.get(ATTEMPT.MODEL_ID),
                r.get(ATTEMPT.MOTOR_ID),
                released != null ? released : called == null ? 0 : called,
                r.get("ratio", Double.class),
                stop == null ? null : stop.doubleValue(),
                r.get(ATTEMPT_NOTE.BACK_OFF_CRANK_TURNS),
                r.get(ATTEMPT_NOTE.REMAINING_CRANK_TURNS),
                r.get(ATTEMPT_NOTE.PEAK_TORQUE_NMM),
                r.get(ATTEMPT.LAUNCH_TORQUE_NMM),
                timed.timeMs(),
                worth.marked(timed.marked(worth.marks())));
    }
}
