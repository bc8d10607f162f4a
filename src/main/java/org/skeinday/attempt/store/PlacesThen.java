package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_STATION;
import static org.skeinday.platform.db.schema.Tables.CONTEST_STATION;
import static org.skeinday.platform.db.schema.Tables.WINDING_WIND;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.contest.StationAdded;
import org.skeinday.evidence.MeterScale;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Torque;

/**
 * The winding places of attempts as they were when those were wound. Records made before that was kept have the meter and the
 * winder of a wind that somebody read; for all else of them the place is as it is described now.
 */
final class PlacesThen {
    /** Of the winder then, where that was kept; else of the place as it is described now, which is joined where it is. */
    static final Field<Double> RATIO = DSL.when(ATTEMPT_STATION.NAME.isNotNull(), ATTEMPT_STATION.WINDER_RATIO)
            .otherwise(CONTEST_STATION.WINDER_RATIO);

    /** By attempt id, as somebody chose it or as it was called and begun. */
    private final Map<String, AttemptStation> chosen = new HashMap<>();

    /** By attempt id, the place of its last wind. */
    private final Map<String, String> wound = new HashMap<>();

    private PlacesThen() {}

    static PlacesThen of(Tx tx, String event) {
        var places = new PlacesThen();
        tx.sql()
                .select(ATTEMPT.ID, WINDING_WIND.STATION_ID)
                .from(WINDING_WIND)
                .join(ATTEMPT)
                .on(ATTEMPT.ID.eq(WINDING_WIND.ATTEMPT_ID))
                .where(ATTEMPT.EVENT_ID.eq(event).and(WINDING_WIND.STATION_ID.isNotNull()))
                .orderBy(WINDING_WIND.AT_MS)
                .forEach(r -> places.wound.put(r.value1(), r.value2()));
        chosen(
                        tx,
                        ATTEMPT_STATION.ATTEMPT_ID.in(
                                DSL.select(ATTEMPT.ID).from(ATTEMPT).where(ATTEMPT.EVENT_ID.eq(event))))
                .forEach(at -> places.chosen.put(at.attemptId(), at));
        return places;
    }

    static List<AttemptStation> chosen(Tx tx, Condition which) {
        return tx.sql()
                .selectFrom(ATTEMPT_STATION)
                .where(which)
                .orderBy(ATTEMPT_STATION.ATTEMPT_ID)
                .fetchInto(AttemptStation.class);
    }

    /** With a name each: of records made before that was kept the place as it is described now. */
    static List<AttemptStation> told(Tx tx, List<StationAdded> all) {
        Map<String, StationAdded> now = all.stream().collect(Collectors.toMap(StationAdded::id, s -> s));
        Map<String, AttemptStation> told = new TreeMap<>();
        tx.sql()
                .select(WINDING_WIND.ATTEMPT_ID, WINDING_WIND.STATION_ID)
                .from(WINDING_WIND)
                .where(WINDING_WIND.ATTEMPT_ID.isNotNull().and(WINDING_WIND.STATION_ID.isNotNull()))
                .orderBy(WINDING_WIND.AT_MS)
                .forEach(r -> Optional.ofNullable(now.get(r.value2()))
                        .ifPresent(at -> told.put(r.value1(), AttemptStation.of(r.value1(), at))));
        for (AttemptStation at : chosen(tx, DSL.noCondition())) {
            StationAdded there = at.stationId() == null ? null : now.get(at.stationId());
            if (at.name() != null) {
                told.put(at.attemptId(), at);
            } else if (there != null) {
                told.put(at.attemptId(), AttemptStation.of(at.attemptId(), there));
            }
        }
        return List.copyOf(told.values());
    }

    /** Its id; null where nobody has chosen or tapped it. */
    @Nullable
    String station(String attempt) {
        AttemptStation at = chosen.get(attempt);
        return at == null ? wound.get(attempt) : at.stationId();
    }

    /** As it was. @param now the same place as it is described now; null where it is prepared no more */
    Optional<StationAdded> of(String attempt, @Nullable StationAdded now) {
        AttemptStation at = chosen.get(attempt);
        String name = at == null ? null : at.name();
        if (at == null || name == null) {
            return Optional.ofNullable(now);
        }
        var then = new StationAdded.Then(
                name,
                at.meter(),
                at.divisionNmm(),
                at.divisionTyped(),
                at.fullScaleNmm(),
                at.fullScaleTyped(),
                at.winderRatio(),
                at.outputTurns());
        return Optional.of(now == null ? then.alone(at.stationId() == null ? attempt : at.stationId()) : now.as(then));
    }

    /** By attempt id, as far as the winder's turns were counted. */
    static Map<String, Double> ratios(Tx tx) {
        Map<String, Double> ratios = new HashMap<>();
        tx.sql()
                .select(ATTEMPT_STATION.ATTEMPT_ID, RATIO)
                .from(ATTEMPT_STATION)
                .leftJoin(CONTEST_STATION)
                .on(CONTEST_STATION.ID.eq(ATTEMPT_STATION.STATION_ID))
                .forEach(r -> Optional.ofNullable(r.value2()).ifPresent(ratio -> ratios.put(r.value1(), ratio)));
        return ratios;
    }

    /**
     * Where the scale of the meter ends that each attempt was read from, by attempt id: of single columns, so that what
     * cannot be among the others takes no page down. Empty where that is not known; none for a place without a meter.
     */
    static Map<String, Optional<MeterScale>> scales(Tx tx) {
        Map<String, Optional<MeterScale>> scales = new HashMap<>();
        tx.sql()
                .select(WINDING_WIND.ATTEMPT_ID, WINDING_WIND.FULL_SCALE_NMM)
                .from(WINDING_WIND)
                .where(WINDING_WIND.ATTEMPT_ID.isNotNull().and(WINDING_WIND.METER.isNotNull()))
                .orderBy(WINDING_WIND.AT_MS)
                .forEach(r -> scales.put(r.value1(), scale(r.value2(), null)));
        tx.sql()
                .select(
                        ATTEMPT_STATION.ATTEMPT_ID,
                        DSL.when(ATTEMPT_STATION.NAME.isNotNull(), ATTEMPT_STATION.FULL_SCALE_NMM)
                                .otherwise(CONTEST_STATION.FULL_SCALE_NMM),
                        DSL.when(ATTEMPT_STATION.NAME.isNotNull(), ATTEMPT_STATION.FULL_SCALE_TYPED)
                                .otherwise(CONTEST_STATION.FULL_SCALE_TYPED))
                .from(ATTEMPT_STATION)
                .leftJoin(CONTEST_STATION)
                .on(CONTEST_STATION.ID.eq(ATTEMPT_STATION.STATION_ID))
                .where(DSL.when(ATTEMPT_STATION.NAME.isNotNull(), ATTEMPT_STATION.METER)
                        .otherwise(CONTEST_STATION.METER)
                        .isNotNull())
                .forEach(r -> scales.put(r.value1(), scale(r.value2(), r.value3())));
        return scales;
    }

    private static Optional<MeterScale> scale(@Nullable Double fullNmm, @Nullable String typed) {
        return fullNmm == null
                ? Optional.empty()
                : Optional.of(new MeterScale(
                        fullNmm,
                        typed == null
                                ? String.format(
                                        Locale.ROOT,
                                        "%.2f in-ozf",
                                        Torque.ofNewtonMillimetres(fullNmm).inchOunces())
                                : typed));
    }
}
