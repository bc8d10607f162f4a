package org.skeinday.contest.store;

import static org.skeinday.platform.db.schema.Tables.CONTEST_UNITS;

import java.util.Optional;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.UnitsChosen;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.TorqueUnit;
import org.skeinday.units.UnitSystem;

/** The team's units: lengths as somebody chose them (metric until then), torques as the meter at work is marked. */
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
        return StationStore.atWork(tx)
                .flatMap(TeamUnits::ofMeter)
                .map(lengths::with)
                .orElse(lengths);
    }

    private static Optional<TorqueUnit> ofMeter(StationAdded station) {
        return Optional.ofNullable(station.divisionTyped())
                .or(() -> Optional.ofNullable(station.fullScaleTyped()))
                .flatMap(TorqueUnit::ofTyped);
    }

    static void choose(Tx tx, UnitsChosen fact) {
        tx.sql().deleteFrom(CONTEST_UNITS).execute();
        tx.sql()
                .insertInto(CONTEST_UNITS, CONTEST_UNITS.ID, CONTEST_UNITS.UNITS)
                .values(ONE, fact.units())
                .execute();
    }
}
