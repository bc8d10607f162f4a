package org.skeinday.attempt.web;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.StationStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.winding.Wind;

/**
 * At which winding place each wind of an attempt was made, by name: after a break another place can be chosen for the spare.
 * Nothing is said where there are not two places, and of a place that is prepared no more.
 *
 * @param byWind by the wind's id
 */
record WindPlaces(Map<String, String> byWind) {
    static WindPlaces of(Tx tx, AttemptNow attempt) {
        return Apart.made(
                "The winding places of the winds", () -> read(tx, attempt), words -> new WindPlaces(Map.of()));
    }

    private static WindPlaces read(Tx tx, AttemptNow attempt) {
        List<StationAdded> all = StationStore.all(tx);
        Map<String, String> names = new HashMap<>();
        all.forEach(station -> names.put(station.id(), station.name()));
        Map<String, String> byWind = new HashMap<>();
        if (all.size() > 1) {
            LiveAttempts.evidence(tx, attempt.id()).stream()
                    .flatMap(known -> known.winds().stream())
                    .map(Wind::begun)
                    .filter(begun -> names.containsKey(String.valueOf(begun.stationId())))
                    .forEach(begun -> byWind.put(
                            begun.id(), Objects.requireNonNull(names.get(String.valueOf(begun.stationId())))));
        }
        return new WindPlaces(byWind);
    }

    /** Whether the attempt was wound at more than one: then no line can speak for all of it. */
    boolean differ() {
        return byWind.values().stream().distinct().count() > 1;
    }

    Optional<String> at(Wind wind) {
        return Optional.ofNullable(byWind.get(wind.begun().id()));
    }
}
