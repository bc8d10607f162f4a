package org.skeinday.bench.web;

import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindBegun;

/** The winding place of a wind, with the meter that is read and the winder that is cranked. */
final class WoundPlace {
    private WoundPlace() {}

    /** Where it is being wound; before the first crank turn where its attempt is to be. */
    static Optional<StationAdded> of(Tx tx, @Nullable AttemptNow attempt, @Nullable Wind wind) {
        WindBegun begun = wind == null ? null : wind.begun();
        String wound = begun == null ? null : begun.stationId();
        if (begun != null && wound != null) {
            return find(tx, wound).map(station -> station.as(then(station, begun)));
        }
        return attempt == null
                ? Optional.empty()
                : EntryStore.find(tx, attempt.entryId()).flatMap(entry -> Stations.of(tx, entry, attempt.id()));
    }

    private static Optional<StationAdded> find(Tx tx, String id) {
        return StationStore.all(tx).stream()
                .filter(station -> station.id().equals(id))
                .findFirst();
    }

    /** What was read and cranked is what was there at the first turn, whatever the place is described as since. */
    private static StationAdded.Then then(StationAdded now, WindBegun begun) {
        boolean sameMeter = Objects.equals(now.divisionNmm(), begun.divisionNmm());
        boolean sameScale = Objects.equals(now.fullScaleNmm(), begun.fullScaleNmm());
        return new StationAdded.Then(
                now.name(),
                begun.meter(),
                begun.divisionNmm(),
                sameMeter ? now.divisionTyped() : null,
                begun.fullScaleNmm(),
                sameScale ? now.fullScaleTyped() : null,
                begun.ratio(),
                now.outputTurns());
    }
}
