package org.skeinday.winding.store;

import static org.jooq.impl.DSL.coalesce;
import static org.jooq.impl.DSL.falseCondition;
import static org.jooq.impl.DSL.inline;
import static org.jooq.impl.DSL.lag;
import static org.jooq.impl.DSL.max;
import static org.jooq.impl.DSL.min;
import static org.jooq.impl.DSL.name;
import static org.jooq.impl.DSL.select;
import static org.jooq.impl.DSL.selectDistinct;
import static org.jooq.impl.DSL.sum;
import static org.jooq.impl.DSL.when;
import static org.jooq.impl.DSL.with;
import static org.skeinday.platform.db.schema.Tables.EVIDENCE_MARK;
import static org.skeinday.platform.db.schema.Tables.WINDING_COUNTED;
import static org.skeinday.platform.db.schema.Tables.WINDING_HELD;
import static org.skeinday.platform.db.schema.Tables.WINDING_JUDGED;
import static org.skeinday.platform.db.schema.Tables.WINDING_MARK;
import static org.skeinday.platform.db.schema.Tables.WINDING_PHASE;
import static org.skeinday.platform.db.schema.Tables.WINDING_WIND;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jooq.CommonTableExpression;
import org.jooq.Field;
import org.jooq.Record1;
import org.jooq.Record4;
import org.jooq.Record5;
import org.jooq.Select;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Source;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.MarkDoubts;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPhase;

/**
 * Counted winds of which something may be asked, so that a page need not read every mark of every wind to find the few. The
 * database says no more than what may be: nothing that {@link WindWorth} asks about is missing, and what it does not ask
 * about may be among them. A season of winds of which nothing can be asked brings no row.
 */
public final class WindsToAsk {
    private static final long EVER = Long.MAX_VALUE;
    private static final double HAIR = 1 - 1e-6;

    private WindsToAsk() {}

    /** As they were begun; nobody has left them out. @param leastTurns motor turns that are asked about on some motor, null for none */
    public static List<Wind> of(Tx tx, @Nullable Double leastTurns) {
        Set<String> ids = new HashSet<>();
        List.of(counts(leastTurns), marked(), offScale(), beyondMeter(), jumped(), fell(), heldAbove())
                .forEach(ask -> ids.addAll(tx.sql().fetch(ask).getValues(0, String.class)));
        if (ids.isEmpty()) {
            return List.of();
        }
        return WindStore.of(
                tx,
                WINDING_WIND
                        .ID
                        .in(ids)
                        .and(WINDING_WIND.ID.in(select(WINDING_COUNTED.WIND_ID).from(WINDING_COUNTED)))
                        .and(WINDING_WIND.ID.notIn(select(WINDING_JUDGED.WIND_ID)
                                .from(WINDING_JUDGED)
                                .where(WINDING_JUDGED.REASON.isNotNull()))));
    }

    /** More than is asked about on the weakest motor. */
    private static Select<Record1<String>> counts(@Nullable Double leastTurns) {
        Field<Double> turns =
                WINDING_COUNTED.STOP_CRANK_TURNS.cast(Double.class).mul(WINDING_WIND.RATIO);
        return select(WINDING_WIND.ID)
                .from(WINDING_WIND)
                .join(WINDING_COUNTED)
                .on(WINDING_COUNTED.WIND_ID.eq(WINDING_WIND.ID))
                .where(leastTurns == null ? falseCondition() : turns.gt(leastTurns));
    }

    /** What a form offered of it, and marks above the batch's band. */
    private static Select<Record1<String>> marked() {
        return selectDistinct(EVIDENCE_MARK.FLIGHT_ID)
                .from(EVIDENCE_MARK)
                .where(EVIDENCE_MARK.CONFIRMED.isFalse())
                .and(EVIDENCE_MARK.SOURCE.eq(Source.OFFERED.word()).or(EVIDENCE_MARK.ASKED.isTrue()))
                .and(EVIDENCE_MARK.FLIGHT_ID.in(select(WINDING_WIND.ID).from(WINDING_WIND)));
    }

    /** A reading of the hold off the scale. */
    private static Select<Record1<String>> offScale() {
        return selectDistinct(WINDING_HELD.WIND_ID)
                .from(WINDING_HELD)
                .join(WINDING_WIND)
                .on(WINDING_WIND.ID.eq(WINDING_HELD.WIND_ID))
                .where(WINDING_HELD.TORQUE_NMM.ge(WINDING_WIND.FULL_SCALE_NMM.mul(HAIR)));
    }

    /** As many marks up as the meter has, however many went down again. */
    private static Select<Record1<String>> beyondMeter() {
        Field<BigDecimal> ups = sum(when(WINDING_MARK.STEP.gt(0), inline(1)).otherwise(inline(0)));
        return select(WINDING_MARK.WIND_ID)
                .from(WINDING_MARK)
                .join(WINDING_WIND)
                .on(WINDING_WIND.ID.eq(WINDING_MARK.WIND_ID))
                .where(WINDING_MARK.LEFT_OUT.isFalse())
                .and(WINDING_WIND.DIVISION_NMM.gt(0.0))
                .groupBy(WINDING_MARK.WIND_ID, WINDING_WIND.DIVISION_NMM, WINDING_WIND.FULL_SCALE_NMM)
                .having(ups.cast(Double.class)
                        .plus(coalesce(max(WINDING_MARK.SET_TO), inline(0)).cast(Double.class))
                        .mul(WINDING_WIND.DIVISION_NMM)
                        .gt(WINDING_WIND.FULL_SCALE_NMM.mul(HAIR)));
    }

    /** Two marks up at once; what lies between those that count only brings them closer together. */
    private static Select<Record1<String>> jumped() {
        var m = WINDING_MARK;
        Field<Long> apart = m.ELAPSED_MS.minus(
                lag(m.ELAPSED_MS).over().partitionBy(m.WIND_ID).orderBy(m.ELAPSED_MS));
        var ups = select(m.WIND_ID.as("of"), apart.as("apart"))
                .from(m)
                .where(m.LEFT_OUT.isFalse(), m.STEP.ge(0))
                .asTable("ups");
        return selectDistinct(ups.field("of", String.class))
                .from(ups)
                .where(ups.field("apart", Long.class).le(MarkDoubts.AT_ONCE_MS));
    }

    /** A mark down before the last turn and the step in. */
    private static Select<Record1<String>> fell() {
        var phases = phases();
        var m = WINDING_MARK;
        return with(phases)
                .selectDistinct(m.WIND_ID)
                .from(m)
                .leftJoin(phases)
                .on(phases.field(0, String.class).eq(m.WIND_ID))
                .where(m.LEFT_OUT.isFalse(), m.STEP.lt(0))
                .and(m.ELAPSED_MS.le(coalesce(phases.field(1, Long.class), inline(EVER))))
                .and(m.ELAPSED_MS.le(coalesce(phases.field(2, Long.class), inline(EVER))));
    }

    /**
     * Holds that were typed above the highest mark. The level is the sum of the steps: what takes a tap back within two
     * seconds can lower it by one each.
     */
    private static Select<Record1<String>> heldAbove() {
        var phases = phases();
        var steps = steps();
        Field<String> of = steps.field(0, String.class);
        Field<Long> at = steps.field(2, Long.class);
        Field<Long> stopped = coalesce(phases.field(1, Long.class), inline(EVER));
        var back = steps.field(1, Integer.class)
                .lt(0)
                .and(steps.field(3, Long.class).le(MarkDoubts.CORRECTION_MS));
        Field<BigDecimal> least = max(steps.field(4, BigDecimal.class))
                .minus(sum(when(back, inline(1)).otherwise(inline(0))));
        Field<Integer> set =
                max(when(steps.field(1, Integer.class).eq(0), inline(1)).otherwise(inline(0)));
        var peaks = select(of.as("of"), least.as("least"), set.as("was_set"))
                .from(steps)
                .leftJoin(phases)
                .on(phases.field(0, String.class).eq(of))
                .where(at.le(stopped), at.le(coalesce(phases.field(3, Long.class), inline(EVER))))
                .groupBy(of)
                .asTable("peaks");
        Field<Double> known = when(peaks.field("was_set", Integer.class).eq(1), inline(0.0))
                .otherwise(coalesce(peaks.field("least", Double.class), inline(0.0)));
        return with(phases)
                .with(steps)
                .selectDistinct(WINDING_HELD.WIND_ID)
                .from(WINDING_HELD)
                .join(WINDING_WIND)
                .on(WINDING_WIND.ID.eq(WINDING_HELD.WIND_ID))
                .leftJoin(peaks)
                .on(peaks.field("of", String.class).eq(WINDING_HELD.WIND_ID))
                .where(WINDING_HELD.TORQUE_NMM.gt(
                        known.plus(inline(1.0)).mul(WINDING_WIND.DIVISION_NMM).mul(HAIR)));
    }

    /** Until when marks are held against each other, for ever where winding went on after a stop; and when the needle said no more. */
    private static CommonTableExpression<Record4<String, Long, Long, Long>> phases() {
        var p = WINDING_PHASE;
        Field<Integer> again = max(
                when(p.PHASE.in(WindPhase.AGAIN, WindPhase.BACK_ON), inline(1)).otherwise(inline(0)));
        Field<Long> in = max(when(p.PHASE.eq(WindPhase.STEPPING_IN), p.ELAPSED_MS));
        Field<Long> stop = max(when(p.PHASE.eq(WindPhase.STOPPED), p.ELAPSED_MS));
        return name("phases")
                .fields("of", "stopped", "stepped_in", "ended")
                .as(select(
                                p.WIND_ID,
                                when(again.eq(1), inline((Long) null)).otherwise(stop),
                                when(again.eq(1), inline((Long) null)).otherwise(in),
                                min(when(p.PHASE.in(WindPhase.BROKE, WindPhase.OFF_METER), p.ELAPSED_MS)))
                        .from(p)
                        .groupBy(p.WIND_ID));
    }

    /** Of winds whose hold was typed, each mark with how long after the last one it was, and the steps so far. */
    private static CommonTableExpression<Record5<String, Integer, Long, Long, BigDecimal>> steps() {
        var m = WINDING_MARK;
        return name("steps")
                .fields("of", "step", "at", "apart", "steps")
                .as(select(
                                m.WIND_ID,
                                m.STEP,
                                m.ELAPSED_MS,
                                m.ELAPSED_MS.minus(lag(m.ELAPSED_MS)
                                        .over()
                                        .partitionBy(m.WIND_ID)
                                        .orderBy(m.ELAPSED_MS, m.ID)),
                                sum(m.STEP).over().partitionBy(m.WIND_ID).orderBy(m.ELAPSED_MS, m.ID))
                        .from(m)
                        .where(
                                m.LEFT_OUT.isFalse(),
                                m.WIND_ID.in(select(WINDING_HELD.WIND_ID).from(WINDING_HELD))));
    }
}
