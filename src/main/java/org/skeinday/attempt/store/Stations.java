package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_STATION;

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
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.units.UnitSystem;

/**
 * At which winding place an attempt is wound, and so with which meter and which winder: the one place for it, from which plans,
 * cards, limits and pages read. What somebody chose, else where it is or was wound, else the entry's last place while it is
 * free, else a free one. Of free places one with a meter goes before one without. From the call on it stays, whatever becomes free: what
 * was checked was checked there; from the first crank turn on so does what its meter and its winder are.
 */
public final class Stations {
    /** Where no event tells the winder (common practice). */
    private static final double USUAL_RATIO = 10;

    private final List<StationAdded> all;
    private final PlacesThen known;
    private final List<Row> attempts;

    /**
     * @param isThere whether its motor is there: called, wound or held, or given up and not run back
     * @param isToCome whether nothing was wound of it yet, so that the place is as it is described now
     */
    private record Row(String id, String entry, boolean isThere, boolean isToCome) {}

    private Stations(Tx tx, List<StationAdded> all, String event) {
        this.all = all;
        this.known = PlacesThen.of(tx, event);
        this.attempts = tx.sql()
                .select(ATTEMPT.ID, ATTEMPT.ENTRY_ID, ATTEMPT.STATE, ATTEMPT.TURNS_ON)
                .from(ATTEMPT)
                .where(ATTEMPT.EVENT_ID.eq(event))
                .orderBy(ATTEMPT.NUMBER.desc())
                .fetch(r -> row(tx, r.value1(), r.value2(), State.of(r.value3()), r.value4()));
    }

    private static Row row(Tx tx, String id, String entry, State state, boolean turnsOn) {
        return new Row(
                id,
                entry,
                state.isBeforeRelease() || turnsOn && isUrgent(tx, id),
                state == State.PLANNED || state == State.CALLED);
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
        return in(tx, entry.eventId()).of(entry.id(), attempt == null ? "" : attempt);
    }

    /** The team's units with torques as the meter there shows them. @param attempt null before the entry is called */
    public static UnitSystem units(Tx tx, EntryAdded entry, @Nullable String attempt, UnitSystem team) {
        return of(tx, entry, attempt).map(place -> place.units(team)).orElse(team);
    }

    /** Those of an event, read once where more than one thing is asked of them. */
    public static Stations in(Tx tx, String event) {
        return new Stations(tx, StationStore.all(tx), event);
    }

    /** Where it was wound as somebody chose or tapped it, as the place was then; empty where nobody did. */
    public static Optional<StationAdded> known(Tx tx, EntryAdded entry, String attempt) {
        return in(tx, entry.eventId()).known(attempt);
    }

    /** Motor turns of one crank turn there; the event's where nobody has counted the winder's own. */
    public static double ratio(Optional<StationAdded> station, EventAdded event) {
        return station.map(StationAdded::winderRatio).orElse(event.winderRatio());
    }

    /** Motor turns of one crank turn where no place is known: of the event at hand, else as most winders have it. */
    public static double usualRatio(Tx tx) {
        return EventStore.next(tx).map(EventAdded::winderRatio).orElse(USUAL_RATIO);
    }

    /** By attempt id: of the winder at its place, as far as the place is known and the winder's turns were counted. */
    static Map<String, Double> ratios(Tx tx) {
        return PlacesThen.ratios(tx);
    }

    /** Of all attempts of which it is known, as those places were then: with as many queries for a season as for a day. */
    public static List<AttemptStation> told(Tx tx) {
        return PlacesThen.told(tx, StationStore.all(tx));
    }

    /** By name. */
    public List<StationAdded> all() {
        return all;
    }

    /** Where a called attempt is wound; empty while no winding place is prepared. */
    public Optional<StationAdded> of(AttemptNow attempt) {
        return of(attempt.entryId(), attempt.id());
    }

    /** The same as {@link #known(Tx, EntryAdded, String)}. */
    public Optional<StationAdded> known(String attempt) {
        return known.of(attempt, now(attempt).orElse(null));
    }

    /** Attempts beside this one that are called, wound or held at this place, or were given up there and are not run back. */
    public List<String> openAt(StationAdded station, AttemptNow besides) {
        return openAt(station.id(), besides.id()).toList();
    }

    /** All attempts that are there. */
    public List<String> openAt(StationAdded station) {
        return openAt(station.id(), "").toList();
    }

    /** Of what is to be called nothing is said of places that are free just now: what is printed must hold. */
    private Optional<StationAdded> of(String entry, String attempt) {
        Optional<StationAdded> wound = isToCome(attempt) ? now(attempt) : known(attempt);
        if (wound.isPresent() || all.size() < 2) {
            return wound.or(() -> all.stream().findFirst());
        }
        List<StationAdded> metered = all.stream().filter(s -> s.meter() != null).toList();
        List<StationAdded> fit = metered.isEmpty() ? all : metered;
        Optional<StationAdded> last = attempts.stream()
                .filter(row -> row.entry().equals(entry) && !row.id().equals(attempt))
                .flatMap(row -> now(row.id()).stream())
                .findFirst();
        if (attempt.isEmpty()) {
            return last.or(() -> fit.stream().findFirst());
        }
        return last.filter(station -> isFree(station, attempt))
                .or(() ->
                        fit.stream().filter(station -> isFree(station, attempt)).findFirst())
                .or(() ->
                        all.stream().filter(station -> isFree(station, attempt)).findFirst())
                .or(() -> last)
                .or(() -> fit.stream().findFirst());
    }

    private boolean isToCome(String attempt) {
        return attempts.stream()
                .filter(row -> row.id().equals(attempt))
                .findFirst()
                .map(Row::isToCome)
                .orElse(true);
    }

    /** As it is described now; empty where nothing is known, and for a place that is prepared no more. */
    private Optional<StationAdded> now(String attempt) {
        return all.stream()
                .filter(station -> station.id().equals(known.station(attempt)))
                .findFirst();
    }

    private boolean isFree(StationAdded station, String besides) {
        return openAt(station.id(), besides).findAny().isEmpty();
    }

    private Stream<String> openAt(String station, String besides) {
        return attempts.stream()
                .filter(row -> row.isThere() && !row.id().equals(besides))
                .map(Row::id)
                .filter(id -> station.equals(known.station(id)));
    }
}
