package org.skeinday.hall.store;

import static org.skeinday.platform.db.schema.Tables.HALL_AIR;
import static org.skeinday.platform.db.schema.Tables.HALL_DESCRIBED;
import static org.skeinday.platform.db.schema.Tables.HALL_DISTANCE;
import static org.skeinday.platform.db.schema.Tables.HALL_OBSTRUCTION;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.hall.AirMeasured;
import org.skeinday.hall.HallDescribed;
import org.skeinday.hall.Judged;
import org.skeinday.hall.PlaceMeasured;
import org.skeinday.hall.Separation;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Removed;

/** Halls as they were found, their distances, their air. */
public final class HallStore {
    private HallStore() {}

    public static List<FactKind> kinds() {
        return List.of(
                FactKind.of("hall.described", HallDescribed.class, HallStore::described),
                FactKind.of("air.measured", AirMeasured.class, HallStore::measured),
                FactKind.of("air.removed", Removed.class, (tx, fact) -> Rows.remove(tx, HALL_AIR.ID, fact.id())));
    }

    private static void described(Tx tx, HallDescribed fact) {
        Rows.remove(tx, HALL_DESCRIBED.HALL, fact.hall());
        Rows.remove(tx, HALL_OBSTRUCTION.HALL, fact.hall());
        Rows.remove(tx, HALL_DISTANCE.HALL, fact.hall());
        tx.sql().executeInsert(tx.sql().newRecord(HALL_DESCRIBED, fact));
        int row = 0;
        for (HallDescribed.Obstruction obstruction : fact.obstructions()) {
            var one = tx.sql().newRecord(HALL_OBSTRUCTION, obstruction);
            one.setHall(fact.hall());
            one.setRowNo(row++);
            tx.sql().executeInsert(one);
        }
        for (HallDescribed.Kept kept : fact.distances()) {
            var one = tx.sql().newRecord(HALL_DISTANCE, kept);
            one.setHall(fact.hall());
            tx.sql().executeInsert(one);
        }
    }

    private static void measured(Tx tx, AirMeasured fact) {
        tx.sql().executeInsert(tx.sql().newRecord(HALL_AIR, fact));
    }

    public static Optional<HallDescribed> find(Tx tx, String hall) {
        return tx.sql()
                .selectFrom(HALL_DESCRIBED)
                .where(HALL_DESCRIBED.HALL.eq(hall))
                .fetchOptional(r -> new HallDescribed(
                        r.getHall(),
                        r.getCeilingMm(),
                        r.getCeilingTyped(),
                        obstructions(tx, hall),
                        distances(tx, hall),
                        r.getNote(),
                        r.getAtMs(),
                        r.getPersonId()));
    }

    private static List<HallDescribed.Obstruction> obstructions(Tx tx, String hall) {
        return tx.sql()
                .select(HALL_OBSTRUCTION.NAME, HALL_OBSTRUCTION.HEIGHT_MM, HALL_OBSTRUCTION.HEIGHT_TYPED)
                .from(HALL_OBSTRUCTION)
                .where(HALL_OBSTRUCTION.HALL.eq(hall))
                .orderBy(HALL_OBSTRUCTION.ROW_NO)
                .fetchInto(HallDescribed.Obstruction.class);
    }

    private static List<HallDescribed.Kept> distances(Tx tx, String hall) {
        return tx.sql()
                .select(HALL_DISTANCE.WORD, HALL_DISTANCE.MM, HALL_DISTANCE.TYPED)
                .from(HALL_DISTANCE)
                .where(HALL_DISTANCE.HALL.eq(hall))
                .orderBy(HALL_DISTANCE.WORD)
                .fetchInto(HallDescribed.Kept.class);
    }

    /** The distances to keep in a hall: the usual ones where nothing else was set. */
    public static Separation separation(Tx tx, String hall) {
        return find(tx, hall).map(HallDescribed::separation).orElseGet(Separation::usual);
    }

    /** Null for no place. */
    public static @Nullable Judged judged(Tx tx, @Nullable PlaceMeasured place) {
        return place == null ? null : new Judged(place, separation(tx, place.hall()));
    }

    /** All that was measured from one moment to another, in order of time. */
    public static List<AirMeasured> air(Tx tx, long fromMs, long toMs) {
        return tx.sql()
                .selectFrom(HALL_AIR)
                .where(HALL_AIR.AT_MS.between(fromMs, toMs))
                .orderBy(HALL_AIR.AT_MS, HALL_AIR.ID)
                .fetch(r -> new AirMeasured(
                        r.getId(), r.getHall(), r.getCelsius(), r.getHumidity(), r.getAtMs(), r.getPersonId()));
    }

    public static boolean isMeasured(Tx tx, String air) {
        return tx.sql().fetchExists(HALL_AIR, HALL_AIR.ID.eq(air));
    }
}
