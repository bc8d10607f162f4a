package org.skeinday.motor.store;

import static org.skeinday.platform.db.schema.Tables.MOTOR;
import static org.skeinday.platform.db.schema.Tables.MOTOR_BREAK_MISTAKEN;
import static org.skeinday.platform.db.schema.Tables.MOTOR_CLOCK_JUMP;
import static org.skeinday.platform.db.schema.Tables.MOTOR_NOW;
import static org.skeinday.platform.db.schema.Tables.MOTOR_PLACE;
import static org.skeinday.platform.db.schema.Tables.MOTOR_SHIFT;
import static org.skeinday.platform.db.schema.Tables.MOTOR_STEP;
import static org.skeinday.platform.db.schema.Tables.MOTOR_WAIT;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.impl.DSL;
import org.skeinday.motor.BreakMistaken;
import org.skeinday.motor.ClockJump;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorInspected;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.Wait;
import org.skeinday.platform.db.Tx;

/** Reads what was done to motors, where each stands, and what is waited for. */
public final class MotorLifeStore {
    /** All that the fact has; whether it was taken back is the table's own. */
    private static final List<Field<?>> STEP = Arrays.stream(MOTOR_STEP.fields())
            .filter(f -> !f.equals(MOTOR_STEP.UNDONE))
            .toList();

    private MotorLifeStore() {}

    /** Every motor, by tag. */
    public static List<MotorLife> all(Tx tx) {
        return lives(
                tx,
                MotorStore.all(tx),
                InspectionStore.all(tx),
                MOTOR_NOW.MOTOR_ID.isNotNull(),
                MOTOR_SHIFT.MOTOR_ID.isNotNull());
    }

    public static Optional<MotorLife> find(Tx tx, String motor) {
        List<MotorAdded> found = MotorStore.find(tx, motor).stream().toList();
        List<MotorInspected> inspected =
                InspectionStore.find(tx, motor).stream().toList();
        return lives(tx, found, inspected, MOTOR_NOW.MOTOR_ID.eq(motor), MOTOR_SHIFT.MOTOR_ID.eq(motor)).stream()
                .findFirst();
    }

    private static List<MotorLife> lives(
            Tx tx, List<MotorAdded> motors, List<MotorInspected> inspected, Condition ofNow, Condition ofShift) {
        Map<String, MotorStep> now = tx
                .sql()
                .select(STEP)
                .from(MOTOR_STEP)
                .join(MOTOR_NOW)
                .on(MOTOR_NOW.STEP_ID.eq(MOTOR_STEP.ID))
                .where(ofNow)
                .fetchInto(MotorStep.class)
                .stream()
                .collect(Collectors.toMap(MotorStep::motorId, step -> step));
        Map<String, BigDecimal> shifts = tx.sql()
                .select(MOTOR_SHIFT.MOTOR_ID, DSL.sum(MOTOR_SHIFT.BY_MS))
                .from(MOTOR_SHIFT)
                .where(ofShift)
                .groupBy(MOTOR_SHIFT.MOTOR_ID)
                .fetchMap(MOTOR_SHIFT.MOTOR_ID, DSL.sum(MOTOR_SHIFT.BY_MS));
        Set<String> handedIn = inspected.stream()
                .filter(MotorInspected::handedIn)
                .map(MotorInspected::motorId)
                .collect(Collectors.toSet());
        return motors.stream()
                .map(m -> new MotorLife(
                        m,
                        now.get(m.id()),
                        handedIn.contains(m.id()),
                        shifts.getOrDefault(m.id(), BigDecimal.ZERO).longValue()))
                .toList();
    }

    /** Whether this is the last thing that was done to its motor. */
    public static boolean stands(Tx tx, String step) {
        return tx.sql().fetchExists(MOTOR_NOW, MOTOR_NOW.STEP_ID.eq(step));
    }

    /** What was done by that id; empty for none, and where it was taken back. */
    public static Optional<MotorStep> step(Tx tx, String id) {
        return tx.sql()
                .select(STEP)
                .from(MOTOR_STEP)
                .where(MOTOR_STEP.ID.eq(id).and(MOTOR_STEP.UNDONE.isFalse()))
                .fetchOptionalInto(MotorStep.class);
    }

    /** Its break that stands, the last where several do; empty while it is whole. */
    public static Optional<MotorStep> breakOf(Tx tx, String motor) {
        return stepsOf(tx, motor).stream()
                .filter(step -> step.deed().equals(MotorDeed.BREAK.word()))
                .findFirst();
    }

    /** Breaks of a motor that were none after all, the last first. */
    public static List<BreakMistaken> mistaken(Tx tx, String motor) {
        return tx.sql()
                .selectFrom(MOTOR_BREAK_MISTAKEN)
                .where(MOTOR_BREAK_MISTAKEN.MOTOR_ID.eq(motor))
                .orderBy(MOTOR_BREAK_MISTAKEN.AT_MS.desc(), MOTOR_BREAK_MISTAKEN.ID.desc())
                .fetchInto(BreakMistaken.class);
    }

    /** Of every motor that is broken, its last break. */
    public static List<MotorStep> breaks(Tx tx) {
        Map<String, MotorStep> last = new LinkedHashMap<>();
        tx.sql()
                .select(STEP)
                .from(MOTOR_STEP)
                .where(MOTOR_STEP.DEED.eq(MotorDeed.BREAK.word()).and(MOTOR_STEP.UNDONE.isFalse()))
                .orderBy(MOTOR_STEP.MOTOR_ID, MOTOR_STEP.AT_MS, MOTOR_STEP.ID)
                .fetchInto(MotorStep.class)
                .forEach(step -> last.put(step.motorId(), step));
        return List.copyOf(last.values());
    }

    /** What was done to one motor and not taken back, the last first. */
    public static List<MotorStep> stepsOf(Tx tx, String motor) {
        return tx.sql()
                .select(STEP)
                .from(MOTOR_STEP)
                .where(MOTOR_STEP.MOTOR_ID.eq(motor).and(MOTOR_STEP.UNDONE.isFalse()))
                .orderBy(MOTOR_STEP.AT_MS.desc(), MOTOR_STEP.ID.desc())
                .fetchInto(MotorStep.class);
    }

    /** When motors of these batches broke, epoch ms; what was taken back is none. */
    public static List<Long> brokeAt(Tx tx, Set<String> batches) {
        return tx.sql()
                .select(MOTOR_STEP.AT_MS)
                .from(MOTOR_STEP)
                .join(MOTOR)
                .on(MOTOR.ID.eq(MOTOR_STEP.MOTOR_ID))
                .where(MOTOR_STEP
                        .UNDONE
                        .isFalse()
                        .and(MOTOR_STEP.DEED.eq(MotorDeed.BREAK.word()))
                        .and(MOTOR.BATCH_ID.in(batches)))
                .fetch(MOTOR_STEP.AT_MS);
    }

    /** Each as it is set, else as usual. */
    public static Map<Wait.Name, Wait> waits(Tx tx) {
        Map<Wait.Name, Wait> waits = new EnumMap<>(Wait.Name.class);
        for (Wait.Name name : Wait.Name.values()) {
            waits.put(name, wait(tx, name));
        }
        return waits;
    }

    public static Wait wait(Tx tx, Wait.Name name) {
        return tx.sql()
                .selectFrom(MOTOR_WAIT)
                .where(MOTOR_WAIT.NAME.eq(name.word()))
                .fetchOptionalInto(Wait.class)
                .orElseGet(name::asUsual);
    }

    /** Motors that a person has put at a place, by that place. */
    public static List<String> byHand(Tx tx) {
        return tx.sql().selectFrom(MOTOR_PLACE).orderBy(MOTOR_PLACE.PLACE).fetch(MOTOR_PLACE.MOTOR_ID);
    }

    /** The place before all others. */
    public static long firstPlace(Tx tx) {
        Long least =
                tx.sql().select(DSL.min(MOTOR_PLACE.PLACE)).from(MOTOR_PLACE).fetchOneInto(Long.class);
        return least == null ? 0 : least - 1;
    }

    /** Jumps of the clock of which nobody has said what they were, and that waits run through. */
    public static List<ClockJump> openJumps(Tx tx) {
        return tx.sql()
                .selectFrom(MOTOR_CLOCK_JUMP)
                .where(MOTOR_CLOCK_JUMP.SLEPT.isNull().and(MOTOR_CLOCK_JUMP.BY_MS.gt(0L)))
                .and(MOTOR_CLOCK_JUMP.ID.in(DSL.select(MOTOR_SHIFT.JUMP_ID).from(MOTOR_SHIFT)))
                .orderBy(MOTOR_CLOCK_JUMP.AT_MS)
                .fetchInto(ClockJump.class);
    }

    public static Optional<ClockJump> jump(Tx tx, String id) {
        return tx.sql()
                .selectFrom(MOTOR_CLOCK_JUMP)
                .where(MOTOR_CLOCK_JUMP.ID.eq(id))
                .fetchOptionalInto(ClockJump.class);
    }
}
