package org.skeinday.winding.store;

import static org.skeinday.platform.db.schema.Tables.MOTOR;
import static org.skeinday.platform.db.schema.Tables.WINDING_CONFIRMED;
import static org.skeinday.platform.db.schema.Tables.WINDING_COUNTED;
import static org.skeinday.platform.db.schema.Tables.WINDING_FLOOR_MARK;
import static org.skeinday.platform.db.schema.Tables.WINDING_HELD;
import static org.skeinday.platform.db.schema.Tables.WINDING_MARK;
import static org.skeinday.platform.db.schema.Tables.WINDING_PACED;
import static org.skeinday.platform.db.schema.Tables.WINDING_PHASE;
import static org.skeinday.platform.db.schema.Tables.WINDING_UNDONE;
import static org.skeinday.platform.db.schema.Tables.WINDING_WIND;
import static org.skeinday.platform.db.schema.Tables.WINDING_WINDER;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jooq.Condition;
import org.jooq.Record1;
import org.jooq.Records;
import org.jooq.Select;
import org.jooq.impl.DSL;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.FloorMarkReached;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindPaced;
import org.skeinday.winding.WindPhase;

/** Reads winds. */
public final class WindStore {
    private WindStore() {}

    public static Optional<Wind> find(Tx tx, String id) {
        return of(tx, WINDING_WIND.ID.eq(id)).stream().findFirst();
    }

    /** Who was named for winding when it began; empty in records made before this was kept, and where nobody was. */
    public static Optional<String> winder(Tx tx, String wind) {
        return tx.sql()
                .select(WINDING_WINDER.PERSON_ID)
                .from(WINDING_WINDER)
                .where(WINDING_WINDER.WIND_ID.eq(wind))
                .fetchOptional(WINDING_WINDER.PERSON_ID);
    }

    /**
     * The winds of several attempts with what was done, without what was read of the needle or counted: two queries.
     *
     * @param attempts their ids
     */
    public static List<Wind> asTapped(Tx tx, Select<Record1<String>> attempts) {
        List<WindBegun> begun = tx.sql()
                .selectFrom(WINDING_WIND)
                .where(WINDING_WIND.ATTEMPT_ID.in(attempts))
                .orderBy(WINDING_WIND.AT_MS, WINDING_WIND.ID)
                .fetchInto(WindBegun.class);
        List<String> ids = begun.stream().map(WindBegun::id).toList();
        if (ids.isEmpty()) {
            return List.of();
        }
        Map<String, List<WindPhase>> phases = phases(tx, ids);
        return begun.stream()
                .map(b -> Wind.of(b, phases.getOrDefault(b.id(), List.of()), List.of(), null))
                .toList();
    }

    private static Map<String, List<WindPhase>> phases(Tx tx, List<String> winds) {
        var p = WINDING_PHASE;
        return tx
                .sql()
                .select(p.ID, p.WIND_ID, p.PHASE, p.ELAPSED_MS, p.AT_MS)
                .from(p)
                .where(p.WIND_ID.in(winds))
                .fetch(Records.mapping(WindPhase::new))
                .stream()
                .collect(Collectors.groupingBy(WindPhase::windId));
    }

    /** Column by column: of thousands of marks, finding out for each row what goes where took most of the time. */
    private static Map<String, List<WindMark>> marks(Tx tx, List<String> winds) {
        var m = WINDING_MARK;
        return tx
                .sql()
                .select(m.ID, m.WIND_ID, m.STEP, m.ELAPSED_MS, m.AT_MS, m.LEFT_OUT, m.SET_TO)
                .from(m)
                .where(m.WIND_ID.in(winds))
                .fetch(Records.mapping(WindMark::new))
                .stream()
                .collect(Collectors.groupingBy(WindMark::windId));
    }

    /** The winds of one motor outside any attempt. */
    public static List<Wind> alone(Tx tx, String motor) {
        return of(tx, WINDING_WIND.MOTOR_ID.eq(motor).and(WINDING_WIND.ATTEMPT_ID.isNull()));
    }

    /** Those outside any attempt that were begun since then, in that order. */
    public static List<Wind> aloneSince(Tx tx, long sinceMs) {
        return of(tx, WINDING_WIND.ATTEMPT_ID.isNull().and(WINDING_WIND.AT_MS.ge(sinceMs)));
    }

    /** The metronome that a wind was begun with. */
    public static Optional<WindPaced> paced(Tx tx, String wind) {
        return tx.sql()
                .selectFrom(WINDING_PACED)
                .where(WINDING_PACED.WIND_ID.eq(wind))
                .fetchOptionalInto(WindPaced.class);
    }

    /** Every wind of one motor, in attempts and outside them, in the order in which they were begun. */
    public static List<Wind> ofMotor(Tx tx, String motor) {
        return of(tx, WINDING_WIND.MOTOR_ID.eq(motor));
    }

    /** As they were begun; of ids that are of no wind none. */
    static List<Wind> ofIds(Tx tx, Set<String> ids) {
        return of(tx, WINDING_WIND.ID.in(ids));
    }

    /** Of each of these motors that broke in a wind that was read, the last such wind, by motor. */
    static Map<String, Wind> brokenBy(Tx tx, List<String> motors) {
        Map<String, Wind> broke = new HashMap<>();
        of(tx, WINDING_WIND.MOTOR_ID.in(motors)).stream()
                .filter(wind -> wind.broke().isPresent())
                .forEach(wind -> broke.put(wind.begun().motorId(), wind));
        return broke;
    }

    /** Every wind of a batch's motors whose turns were counted. */
    public static List<Wind> countedOfBatch(Tx tx, String batch) {
        return of(
                tx,
                WINDING_WIND
                        .MOTOR_ID
                        .in(DSL.select(MOTOR.ID).from(MOTOR).where(MOTOR.BATCH_ID.eq(batch)))
                        .and(WINDING_WIND.ID.in(
                                DSL.select(WINDING_COUNTED.WIND_ID).from(WINDING_COUNTED))));
    }

    /** The winds of a batch's motors of which what was read enters fits. */
    public static List<Wind> evidenceOfBatch(Tx tx, String batch) {
        return evidenceOfBatch(tx, batch, new WindWorth(tx));
    }

    /** The same where what winds are worth is read already. */
    public static List<Wind> evidenceOfBatch(Tx tx, String batch, WindWorth worth) {
        return countedOfBatch(tx, batch).stream()
                .filter(wind -> worth.readings(wind).isYes())
                .toList();
    }

    /** How every wind was begun, in that order, without what was read of it: one query. */
    public static List<WindBegun> begun(Tx tx) {
        return tx.sql()
                .selectFrom(WINDING_WIND)
                .orderBy(WINDING_WIND.AT_MS, WINDING_WIND.ID)
                .fetchInto(WindBegun.class);
    }

    /** The turns of every wind that was counted, by its id: one query. */
    public static Map<String, WindCounted> counted(Tx tx) {
        return tx.sql().selectFrom(WINDING_COUNTED).fetchMap(WINDING_COUNTED.WIND_ID, WindCounted.class);
    }

    /** Ids of its marks that were asked about and were so. */
    public static Set<String> confirmed(Tx tx, String wind) {
        return tx.sql()
                .selectFrom(WINDING_CONFIRMED)
                .where(WINDING_CONFIRMED.WIND_ID.eq(wind))
                .fetchSet(WINDING_CONFIRMED.MARK_ID);
    }

    public static Optional<WindMark> mark(Tx tx, String id) {
        return tx.sql().selectFrom(WINDING_MARK).where(WINDING_MARK.ID.eq(id)).fetchOptionalInto(WindMark.class);
    }

    /** Whether a tap was undone. */
    public static boolean isUndone(Tx tx, String tap) {
        return tx.sql().fetchExists(WINDING_UNDONE, WINDING_UNDONE.TAP_ID.eq(tap));
    }

    /** One for each step of winding that was tapped and two for each tap that was undone: a device that has sent more knows better. */
    public static int told(Tx tx, Wind wind) {
        return wind.phases().size()
                + 2
                        * tx.sql()
                                .fetchCount(
                                        WINDING_UNDONE,
                                        WINDING_UNDONE.WIND_ID.eq(wind.begun().id()));
    }

    /** Six queries, however many winds. */
    static List<Wind> of(Tx tx, Condition which) {
        List<WindBegun> begun = tx.sql()
                .selectFrom(WINDING_WIND)
                .where(which)
                .orderBy(WINDING_WIND.AT_MS, WINDING_WIND.ID)
                .fetchInto(WindBegun.class);
        List<String> ids = begun.stream().map(WindBegun::id).toList();
        if (ids.isEmpty()) {
            return List.of();
        }
        Map<String, List<WindPhase>> phases = phases(tx, ids);
        Map<String, List<WindMark>> marks = marks(tx, ids);
        Map<String, List<FloorMarkReached>> floor = floor(tx, ids);
        Map<String, List<HeldRead>> held = held(tx, ids);
        Map<String, WindCounted> counted = tx.sql()
                .selectFrom(WINDING_COUNTED)
                .where(WINDING_COUNTED.WIND_ID.in(ids))
                .fetchMap(WINDING_COUNTED.WIND_ID, WindCounted.class);
        return begun.stream()
                .map(b -> new Wind(
                        b,
                        phases.getOrDefault(b.id(), List.of()),
                        marks.getOrDefault(b.id(), List.of()),
                        floor.getOrDefault(b.id(), List.of()),
                        counted.get(b.id()),
                        held.getOrDefault(b.id(), List.of())))
                .toList();
    }

    private static Map<String, List<FloorMarkReached>> floor(Tx tx, List<String> winds) {
        return tx
                .sql()
                .selectFrom(WINDING_FLOOR_MARK)
                .where(WINDING_FLOOR_MARK.WIND_ID.in(winds))
                .fetchInto(FloorMarkReached.class)
                .stream()
                .collect(Collectors.groupingBy(FloorMarkReached::windId));
    }

    private static Map<String, List<HeldRead>> held(Tx tx, List<String> winds) {
        return tx.sql()
                .selectFrom(WINDING_HELD)
                .where(WINDING_HELD.WIND_ID.in(winds))
                .orderBy(WINDING_HELD.SECONDS)
                .fetchGroups(
                        WINDING_HELD.WIND_ID,
                        r -> new HeldRead(r.getSeconds(), r.getTorqueNmm(), r.getResolutionNmm(), r.getTyped()));
    }
}
