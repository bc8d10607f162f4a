package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_STATION;
import static org.skeinday.platform.db.schema.Tables.CONTEST_STATION;
import static org.skeinday.platform.db.schema.Tables.WINDING_WIND;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.State;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.StationStore;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.units.UnitSystem;

/**
 * At which winding place an attempt is wound, and so with which meter and which winder: the one place for it, from which plans,
 * cards, limits and pages read. What somebody chose, else where it is or was wound, else the entry's last place while it is
 * free, else a free one. A place with a meter goes before one without. From the call on it stays, whatever becomes free: what
 * was checked was checked there.
 */
public final class Stations {
    private final List<StationAdded> all;
    /** By attempt id; the places of this event's attempts as far as they are known. */
    private final Map<String, String> known;

    private final List<Row> attempts;

    /** @param isThere whether its motor is there: called, wound or held, or given up and not run back */
    private record Row(String id, String entry, boolean isThere) {}

    private Stations(Tx tx, List<StationAdded> all, String event) {
        this.all = all;
        this.known = known(tx, event);
        this.attempts = tx.sql()
                .select(ATTEMPT.ID, ATTEMPT.ENTRY_ID, ATTEMPT.STATE, ATTEMPT.TURNS_ON)
                .from(ATTEMPT)
                .where(ATTEMPT.EVENT_ID.eq(event))
                .orderBy(ATTEMPT.NUMBER.desc())
                .fetch(r -> new Row(
                        r.value1(),
                        r.value2(),
                        State.of(r.value3()).isBeforeRelease() || r.value4() && isUrgent(tx, r.value1())));
    }

    /** Given up while it was wound: until the motor is run back, or what is left of it is seen to, nobody winds there. */
    private static boolean isUrgent(Tx tx, String attempt) {
        return LiveAttempts.find(tx, attempt)
                .filter(live -> live.phase().name().isUrgent())
                .isPresent();
    }

    public static List<FactKind> kinds() {
        return List.of(FactKind.of("attempt.station", AttemptStation.class, Rows.put(ATTEMPT_STATION)));
    }

    /** Where it is wound; empty while no winding place is prepared. @param attempt null before the entry is called */
    public static Optional<StationAdded> of(Tx tx, EntryAdded entry, @Nullable String attempt) {
        List<StationAdded> all = StationStore.all(tx);
        return all.size() < 2
                ? all.stream().findFirst()
                : new Stations(tx, all, entry.eventId()).of(entry.id(), attempt == null ? "" : attempt);
    }

    /** The team's units with torques as the meter there shows them. @param attempt null before the entry is called */
    public static UnitSystem units(Tx tx, EntryAdded entry, @Nullable String attempt, UnitSystem team) {
        return of(tx, entry, attempt).map(place -> place.units(team)).orElse(team);
    }

    /** Those of an event, read once where more than one thing is asked of them. */
    public static Stations in(Tx tx, String event) {
        return new Stations(tx, StationStore.all(tx), event);
    }

    /** Where it was wound as somebody chose or tapped it; empty where nobody did. */
    public static Optional<StationAdded> known(Tx tx, EntryAdded entry, String attempt) {
        return in(tx, entry.eventId()).at(attempt);
    }

    /** Motor turns of one crank turn there; the event's where nobody has counted the winder's own. */
    public static double ratio(Optional<StationAdded> station, EventAdded event) {
        return station.map(StationAdded::winderRatio).orElse(event.winderRatio());
    }

    /** By attempt id: of the winder at its place, as far as the place is known and the winder's turns were counted. */
    static Map<String, Double> ratios(Tx tx) {
        return tx.sql()
                .select(ATTEMPT_STATION.ATTEMPT_ID, CONTEST_STATION.WINDER_RATIO)
                .from(ATTEMPT_STATION)
                .join(CONTEST_STATION)
                .on(CONTEST_STATION.ID.eq(ATTEMPT_STATION.STATION_ID))
                .where(CONTEST_STATION.WINDER_RATIO.isNotNull())
                .fetchMap(ATTEMPT_STATION.ATTEMPT_ID, CONTEST_STATION.WINDER_RATIO);
    }

    /** By name. */
    public List<StationAdded> all() {
        return all;
    }

    /** Where a called attempt is wound; empty while no winding place is prepared. */
    public Optional<StationAdded> of(AttemptNow attempt) {
        return of(attempt.entryId(), attempt.id());
    }

    /** Attempts beside this one that are called, wound or held at this place, or were given up there and are not run back. */
    public List<String> openAt(StationAdded station, AttemptNow besides) {
        return openAt(station.id(), besides.id()).toList();
    }

    /** Of what is to be called nothing is said of places that are free just now: what is printed must hold. */
    private Optional<StationAdded> of(String entry, String attempt) {
        List<StationAdded> metered = all.stream().filter(s -> s.meter() != null).toList();
        List<StationAdded> fit = metered.isEmpty() ? all : metered;
        Optional<StationAdded> last = attempts.stream()
                .filter(row -> row.entry().equals(entry) && !row.id().equals(attempt))
                .flatMap(row -> at(row.id()).stream())
                .findFirst();
        if (attempt.isEmpty()) {
            return last.or(() -> fit.stream().findFirst());
        }
        return at(attempt)
                .or(() -> last.filter(station -> isFree(station, attempt)))
                .or(() ->
                        fit.stream().filter(station -> isFree(station, attempt)).findFirst())
                .or(() -> last)
                .or(() -> fit.stream().findFirst());
    }

    /** Empty where nothing is known, and for a place that is prepared no more. */
    private Optional<StationAdded> at(String attempt) {
        return all.stream()
                .filter(station -> station.id().equals(known.get(attempt)))
                .findFirst();
    }

    private boolean isFree(StationAdded station, String besides) {
        return openAt(station.id(), besides).findAny().isEmpty();
    }

    private Stream<String> openAt(String station, String besides) {
        return attempts.stream()
                .filter(row -> row.isThere() && !row.id().equals(besides))
                .map(Row::id)
                .filter(id -> station.equals(known.get(id)));
    }

    private static Map<String, String> known(Tx tx, String event) {
        Map<String, String> known = new HashMap<>();
        tx.sql()
                .select(ATTEMPT.ID, WINDING_WIND.STATION_ID)
                .from(WINDING_WIND)
                .join(ATTEMPT)
                .on(ATTEMPT.ID.eq(WINDING_WIND.ATTEMPT_ID))
                .where(ATTEMPT.EVENT_ID.eq(event).and(WINDING_WIND.STATION_ID.isNotNull()))
                .orderBy(WINDING_WIND.AT_MS)
                .forEach(r -> known.put(r.value1(), r.value2()));
        tx.sql()
                .select(ATTEMPT_STATION.ATTEMPT_ID, ATTEMPT_STATION.STATION_ID)
                .from(ATTEMPT_STATION)
                .join(ATTEMPT)
                .on(ATTEMPT.ID.eq(ATTEMPT_STATION.ATTEMPT_ID))
                .where(ATTEMPT.EVENT_ID.eq(event))
                .forEach(r -> known.put(r.value1(), r.value2()));
        return known;
    }
}
