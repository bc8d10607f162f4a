package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.MOTOR_NOW;
import static org.skeinday.platform.db.schema.Tables.MOTOR_STEP;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jooq.Condition;
import org.jooq.Record1;
import org.jooq.Select;
import org.jooq.impl.DSL;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.Marks;
import org.skeinday.attempt.State;
import org.skeinday.attempt.StepTimes;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.TurnsRunBack;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.motor.MotorStage;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.AttemptRecord;
import org.skeinday.winding.Wind;
import org.skeinday.winding.store.WindStore;

/** Reads attempts as every page shows them: a dozen queries for one attempt or for all of an event. */
public final class LiveAttempts {
    private static final Timed NOTHING = new Timed(List.of(), List.of(), new Marks(List.of()));

    private LiveAttempts() {}

    public static Optional<LiveAttempt> find(Tx tx, String attempt) {
        return evidence(tx, attempt).map(LiveAttempt::of);
    }

    /** By entry and number. */
    public static List<AttemptEvidence> evidenceOfEvent(Tx tx, String event) {
        Condition which = ATTEMPT.EVENT_ID.eq(event);
        List<AttemptRecord> rows = tx.sql()
                .selectFrom(ATTEMPT)
                .where(which)
                .orderBy(ATTEMPT.ENTRY_ID, ATTEMPT.NUMBER)
                .fetch();
        return rows.isEmpty() ? List.of() : new Reading(tx, which, rows).of(rows);
    }

    /** All that the phase of one attempt is made of. */
    public static Optional<AttemptEvidence> evidence(Tx tx, String attempt) {
        List<AttemptRecord> ofEntry = AttemptStore.ofEntry(tx, attempt);
        List<AttemptRecord> one =
                ofEntry.stream().filter(r -> r.getId().equals(attempt)).toList();
        return one.isEmpty()
                ? Optional.empty()
                : new Reading(tx, ATTEMPT.ID.eq(attempt), ofEntry)
                        .of(one).stream().findFirst();
    }

    /** The tables around some attempts, each read once. */
    private static final class Reading {
        private final Map<String, AttemptNumber> numbers;
        private final Map<String, EventAdded> events;
        private final Map<String, List<Wind>> winds;
        private final Map<String, Long> broke;
        private final Map<String, List<AttemptEvidence.BreakTold>> breaks;
        private final Map<String, List<TurnsRunBack>> runBacks;
        private final Map<String, Timed> timed;
        private final Map<String, Integer> missing;
        private final OpenedWindows opened;

        /** @param rows these attempts with all others of their entries */
        Reading(Tx tx, Condition which, List<AttemptRecord> rows) {
            Select<Record1<String>> ids = DSL.select(ATTEMPT.ID).from(ATTEMPT).where(which);
            this.events = events(tx, rows);
            this.numbers = AttemptNumbers.of(tx, rows, id -> Objects.requireNonNull(events.get(id)));
            this.winds = WindStore.asTapped(tx, ids).stream()
                    .collect(Collectors.groupingBy(w -> String.valueOf(w.begun().attemptId())));
            this.broke = broke(tx, which);
            this.breaks = BreakRecord.breaks(tx, ids);
            this.runBacks = BreakRecord.runBacks(tx, ids);
            this.timed = WatchStore.timed(tx, ids);
            this.missing = ResultRecord.missing(tx, ids, timed);
            this.opened = OpenedWindows.of(tx, events.values());
        }

        private static Map<String, EventAdded> events(Tx tx, List<AttemptRecord> rows) {
            Map<String, EventAdded> events = new HashMap<>();
            rows.forEach(r -> events.computeIfAbsent(
                    r.getEventId(), id -> EventStore.find(tx, id).orElseThrow()));
            return events;
        }

        /** When motors that these attempts have now broke, by motor. */
        private static Map<String, Long> broke(Tx tx, Condition which) {
            return tx.sql()
                    .select(MOTOR_STEP.MOTOR_ID, MOTOR_STEP.AT_MS)
                    .from(MOTOR_STEP)
                    .join(MOTOR_NOW)
                    .on(MOTOR_NOW.STEP_ID.eq(MOTOR_STEP.ID))
                    .where(MOTOR_STEP
                            .STAGE
                            .eq(MotorStage.BROKEN.word())
                            .and(MOTOR_STEP.MOTOR_ID.in(
                                    DSL.select(ATTEMPT.MOTOR_ID).from(ATTEMPT).where(which))))
                    .fetchMap(MOTOR_STEP.MOTOR_ID, MOTOR_STEP.AT_MS);
        }

        List<AttemptEvidence> of(List<AttemptRecord> rows) {
            return rows.stream().map(this::one).toList();
        }

        private AttemptEvidence one(AttemptRecord r) {
            String id = r.getId();
            EventAdded event = Objects.requireNonNull(events.get(r.getEventId()));
            boolean signs = event.dayKind() == DayKind.HOSTING && State.of(r.getState()) == State.CLOSED;
            AttemptNow now = AttemptStore.value(r, numbers);
            return new AttemptEvidence(
                    now,
                    event.dayKind(),
                    new StepTimes(
                            id,
                            r.getCalledAtMs(),
                            r.getWindingAtMs(),
                            r.getHoldingAtMs(),
                            r.getReleasedAtMs(),
                            r.getLandedAtMs()),
                    winds.getOrDefault(id, List.of()),
                    broke.get(String.valueOf(r.getMotorId())),
                    breaks.getOrDefault(id, List.of()),
                    runBacks.getOrDefault(id, List.of()),
                    r.getTurnsOn(),
                    timed.getOrDefault(id, NOTHING),
                    event.timekeepers(),
                    signs ? missing.getOrDefault(id, 0) : 0,
                    opened.of(now).orElse(null));
        }
    }
}
