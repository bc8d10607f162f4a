package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_LAST_ACT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_PARTED;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_PEOPLE_SAFE;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_RUN_BACK;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_TURNS_OFF;
import static org.skeinday.platform.db.schema.Tables.MOTOR_NOW;
import static org.skeinday.platform.db.schema.Tables.MOTOR_STEP;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Field;
import org.jooq.Record1;
import org.jooq.Select;
import org.jooq.impl.DSL;
import org.skeinday.attempt.AttemptEvidence.BreakTold;
import org.skeinday.attempt.LastAct;
import org.skeinday.attempt.MotorParted;
import org.skeinday.attempt.PeopleSafe;
import org.skeinday.attempt.State;
import org.skeinday.attempt.TurnsRunBack;
import org.skeinday.attempt.TurnsTakenOff;
import org.skeinday.motor.BreakPlace;
import org.skeinday.motor.MotorStage;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** What was told after motors of attempts parted or were run back, and who moved an attempt last. */
public final class BreakRecord {
    private BreakRecord() {}

    static List<FactKind> kinds() {
        return List.of(
                FactKind.of("attempt.people-safe", PeopleSafe.class, Rows.put(ATTEMPT_PEOPLE_SAFE)),
                FactKind.of("attempt.parted", MotorParted.class, Rows.put(ATTEMPT_PARTED)),
                FactKind.of("attempt.run-back", TurnsRunBack.class, BreakRecord::runBack),
                FactKind.of("attempt.turns-off", TurnsTakenOff.class, Rows.into(ATTEMPT_TURNS_OFF)),
                FactKind.of("attempt.acted", LastAct.class, Rows.put(ATTEMPT_LAST_ACT)));
    }

    /** Crank turns that were taken off a motor of an attempt since it was run back last; 0 where nobody said so. */
    public static double turnsOff(Tx tx, String attempt, String motor) {
        Field<Long> runBack = DSL.field(DSL.select(DSL.coalesce(DSL.max(ATTEMPT_RUN_BACK.AT_MS), 0L))
                .from(ATTEMPT_RUN_BACK)
                .where(ATTEMPT_RUN_BACK.ATTEMPT_ID.eq(attempt).and(ATTEMPT_RUN_BACK.MOTOR_ID.eq(motor))));
        return tx
                .sql()
                .selectFrom(ATTEMPT_TURNS_OFF)
                .where(ATTEMPT_TURNS_OFF.ATTEMPT_ID.eq(attempt).and(ATTEMPT_TURNS_OFF.MOTOR_ID.eq(motor)))
                .and(ATTEMPT_TURNS_OFF.AT_MS.ge(runBack))
                .fetchInto(TurnsTakenOff.class)
                .stream()
                .mapToDouble(TurnsTakenOff::crankTurns)
                .sum();
    }

    /** In which attempt this motor broke, the last where it was said of several; empty outside any. */
    public static Optional<String> attemptBrokenWith(Tx tx, String motor) {
        return tx.sql()
                .select(ATTEMPT_PEOPLE_SAFE.ATTEMPT_ID)
                .from(ATTEMPT_PEOPLE_SAFE)
                .where(ATTEMPT_PEOPLE_SAFE.MOTOR_ID.eq(motor))
                .orderBy(ATTEMPT_PEOPLE_SAFE.AT_MS.desc())
                .limit(1)
                .fetchOptional(ATTEMPT_PEOPLE_SAFE.ATTEMPT_ID);
    }

    /** A motor that was run back is wound anew, unless the attempt was given up; one that was changed is nothing of its state. */
    private static void runBack(Tx tx, TurnsRunBack fact) {
        Rows.into(ATTEMPT_RUN_BACK).accept(tx, fact);
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.STATE, fact.state())
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.TURNS_ON, false)
                .where(ATTEMPT.ID.eq(fact.attemptId()).and(ATTEMPT.MOTOR_ID.eq(fact.motorId())))
                .execute();
        if (fact.state().equals(State.CALLED.word())) {
            tx.sql()
                    .update(ATTEMPT)
                    .setNull(ATTEMPT.WINDING_AT_MS)
                    .setNull(ATTEMPT.HOLDING_AT_MS)
                    .where(ATTEMPT.ID.eq(fact.attemptId()))
                    .execute();
        }
    }

    /** By attempt. @param attempts their ids */
    static Map<String, List<BreakTold>> breaks(Tx tx, Select<Record1<String>> attempts) {
        Map<String, Map<String, BreakTold>> told = new LinkedHashMap<>();
        tx.sql()
                .selectFrom(ATTEMPT_PEOPLE_SAFE)
                .where(ATTEMPT_PEOPLE_SAFE.ATTEMPT_ID.in(attempts))
                .orderBy(ATTEMPT_PEOPLE_SAFE.AT_MS)
                .forEach(r -> told.computeIfAbsent(r.getAttemptId(), a -> new LinkedHashMap<>())
                        .put(r.getMotorId(), new BreakTold(r.getMotorId(), r.getAtMs(), null, null)));
        tx.sql()
                .selectFrom(ATTEMPT_PARTED)
                .where(ATTEMPT_PARTED.ATTEMPT_ID.in(attempts))
                .orderBy(ATTEMPT_PARTED.AT_MS)
                .forEach(r -> told.computeIfAbsent(r.getAttemptId(), a -> new LinkedHashMap<>())
                        .merge(
                                r.getMotorId(),
                                new BreakTold(r.getMotorId(), null, BreakPlace.of(r.getPlace()), r.getAtMs()),
                                (safe, parted) -> new BreakTold(
                                        safe.motorId(), safe.safeAtMs(), parted.where(), parted.whereAtMs())));
        Map<String, List<BreakTold>> lists = new LinkedHashMap<>();
        told.forEach((attempt, byMotor) -> lists.put(attempt, new ArrayList<>(byMotor.values())));
        return lists;
    }

    /** By attempt, the first one first. @param attempts their ids */
    static Map<String, List<TurnsRunBack>> runBacks(Tx tx, Select<Record1<String>> attempts) {
        return tx.sql()
                .selectFrom(ATTEMPT_RUN_BACK)
                .where(ATTEMPT_RUN_BACK.ATTEMPT_ID.in(attempts))
                .orderBy(ATTEMPT_RUN_BACK.AT_MS, ATTEMPT_RUN_BACK.ID)
                .fetchGroups(ATTEMPT_RUN_BACK.ATTEMPT_ID, TurnsRunBack.class);
    }

    /** Attempts of an event whose motor is wound or held: all of them are run back while the hall stands still. */
    public static List<String> wound(Tx tx, String event) {
        return tx.sql()
                .select(ATTEMPT.ID)
                .from(ATTEMPT)
                .where(ATTEMPT.EVENT_ID.eq(event).and(ATTEMPT.MOTOR_ID.isNotNull()))
                .and(ATTEMPT.STATE.in(State.WINDING.word(), State.HOLDING.word()))
                .orderBy(ATTEMPT.ID)
                .fetch(ATTEMPT.ID);
    }

    /**
     * Attempts of an event whose motor is broken or may have turns on, whether it broke since or not: few or none, in one
     * query.
     */
    public static List<String> mayComeFirst(Tx tx, String event) {
        return tx.sql()
                .select(ATTEMPT.ID)
                .from(ATTEMPT)
                .leftJoin(MOTOR_NOW)
                .on(MOTOR_NOW.MOTOR_ID.eq(ATTEMPT.MOTOR_ID))
                .leftJoin(MOTOR_STEP)
                .on(MOTOR_STEP.ID.eq(MOTOR_NOW.STEP_ID))
                .where(ATTEMPT.EVENT_ID.eq(event))
                .and(ATTEMPT.TURNS_ON
                        .isTrue()
                        .or(MOTOR_STEP
                                .STAGE
                                .eq(MotorStage.BROKEN.word())
                                .and(ATTEMPT.STATE.in(
                                        State.CALLED.word(),
                                        State.WINDING.word(),
                                        State.HOLDING.word(),
                                        State.RELEASED.word(),
                                        State.LANDED.word()))))
                .orderBy(ATTEMPT.ID)
                .fetch(ATTEMPT.ID);
    }

    /** Empty in records made before this was kept. */
    public static Optional<LastAct> lastAct(Tx tx, String attempt) {
        return tx.sql()
                .selectFrom(ATTEMPT_LAST_ACT)
                .where(ATTEMPT_LAST_ACT.ATTEMPT_ID.eq(attempt))
                .fetchOptionalInto(LastAct.class);
    }
}
