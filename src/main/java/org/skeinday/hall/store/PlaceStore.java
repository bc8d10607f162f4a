package org.skeinday.hall.store;

import static org.skeinday.platform.db.schema.Tables.HALL_IN_USE;
import static org.skeinday.platform.db.schema.Tables.HALL_PLACE;
import static org.skeinday.platform.db.schema.Tables.HALL_THING;

import java.util.List;
import java.util.Optional;
import org.jooq.Condition;
import org.skeinday.hall.PlaceInUse;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.HallPlaceRecord;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Removed;

/** Winding places that were measured, and the one in use. */
public final class PlaceStore {
    private PlaceStore() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("place.measured", PlaceMeasured.class, PlaceStore::measured),
                FactKind.of("place.in-use", PlaceInUse.class, PlaceStore::use),
                FactKind.of("place.removed", Removed.class, (tx, fact) -> remove(tx, fact.id())));
    }

    private static void measured(Tx tx, PlaceMeasured fact) {
        Rows.remove(tx, HALL_PLACE.ID, fact.id());
        Rows.remove(tx, HALL_THING.PLACE_ID, fact.id());
        tx.sql()
                .insertInto(HALL_PLACE)
                .set(HALL_PLACE.ID, fact.id())
                .set(HALL_PLACE.HALL, fact.hall())
                .set(HALL_PLACE.LANE, fact.lane())
                .set(HALL_PLACE.LANE_MM, fact.laneMm())
                .set(HALL_PLACE.LANE_TYPED, fact.laneTyped())
                .set(HALL_PLACE.PAST_MM, fact.pastWinderMm())
                .set(HALL_PLACE.PAST_TYPED, fact.pastWinderTyped())
                .set(HALL_PLACE.DRIFT_HOUR, fact.driftHour())
                .set(HALL_PLACE.DRIFT_MPS, fact.driftMps())
                .set(HALL_PLACE.AT_MS, fact.atMs())
                .set(HALL_PLACE.PERSON_ID, fact.personId())
                .execute();
        int row = 0;
        for (PlaceMeasured.Thing thing : fact.things()) {
            var one = tx.sql().newRecord(HALL_THING, thing);
            one.setPlaceId(fact.id());
            one.setRowNo(row++);
            tx.sql().executeInsert(one);
        }
    }

    private static void use(Tx tx, PlaceInUse fact) {
        tx.sql().deleteFrom(HALL_IN_USE).execute();
        tx.sql()
                .insertInto(HALL_IN_USE)
                .set(HALL_IN_USE.ONE, 1)
                .set(HALL_IN_USE.PLACE_ID, fact.placeId())
                .set(HALL_IN_USE.SINCE_MS, fact.sinceMs())
                .execute();
    }

    private static void remove(Tx tx, String id) {
        Rows.remove(tx, HALL_PLACE.ID, id);
        Rows.remove(tx, HALL_THING.PLACE_ID, id);
        Rows.remove(tx, HALL_IN_USE.PLACE_ID, id);
    }

    /** By hall and lane. */
    public static List<PlaceMeasured> all(Tx tx) {
        return of(tx, HALL_PLACE.ID.isNotNull());
    }

    public static Optional<PlaceMeasured> find(Tx tx, String id) {
        return of(tx, HALL_PLACE.ID.eq(id)).stream().findFirst();
    }

    public static Optional<PlaceMeasured> inUse(Tx tx) {
        return tx.sql()
                .selectFrom(HALL_IN_USE)
                .fetchOptional(HALL_IN_USE.PLACE_ID)
                .flatMap(id -> find(tx, id));
    }

    private static List<PlaceMeasured> of(Tx tx, Condition which) {
        return tx.sql()
                .selectFrom(HALL_PLACE)
                .where(which)
                .orderBy(HALL_PLACE.HALL, HALL_PLACE.LANE, HALL_PLACE.ID)
                .fetch(r -> place(tx, r));
    }

    private static PlaceMeasured place(Tx tx, HallPlaceRecord r) {
        return new PlaceMeasured(
                r.getId(),
                r.getHall(),
                r.getLane(),
                r.getLaneMm(),
                r.getLaneTyped(),
                r.getPastMm(),
                r.getPastTyped(),
                r.getDriftHour(),
                r.getDriftMps(),
                tx.sql()
                        .select(
                                HALL_THING.KIND,
                                HALL_THING.NAME,
                                HALL_THING.HOW,
                                HALL_THING.FIRST_MM,
                                HALL_THING.FIRST_TYPED,
                                HALL_THING.SECOND_MM,
                                HALL_THING.SECOND_TYPED,
                                HALL_THING.SIDE,
                                HALL_THING.BLOWS_HOUR)
                        .from(HALL_THING)
                        .where(HALL_THING.PLACE_ID.eq(r.getId()))
                        .orderBy(HALL_THING.ROW_NO)
                        .fetchInto(PlaceMeasured.Thing.class),
                r.getAtMs(),
                r.getPersonId());
    }
}
