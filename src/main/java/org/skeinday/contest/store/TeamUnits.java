package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_UNITS;

import org.skeinday.contest.StationAdded;
import org.skeinday.contest.UnitsChosen;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.UnitSystem;

/**
 * The team's units: lengths as somebody chose them (metric until then), torques as the meter
 * at work is marked, and of an attempt as that of its winding place ({@link StationAdded#units}).
 */
public final class TeamUnits {
    private static final int ONE = 1;

    private TeamUnits() {}

    public static UnitSystem of(Tx tx) {
        UnitSystem lengths = tx.sql()
                .select(CONTEST_UNITS.UNITS)
                .from(CONTEST_UNITS)
                .fetchOptional(CONTEST_UNITS.UNITS)
                .map(UnitSystem::ofWord)
                .orElse(UnitSystem.METRIC);
        return StationStore.atWork(tx).map(place -> place.units(lengths)).orElse(lengths);
    }

    static void choose(Tx tx, UnitsChosen fact) {
        tx.sql().deleteFrom(CONTEST_UNITS).execute();
        tx.sql()
                .insertInto(CONTEST_UNITS, CONTEST_UNITS.ID, CONTEST_UNITS.UNITS)
                .values(ONE, fact.units())
                .execute();
    }
}
