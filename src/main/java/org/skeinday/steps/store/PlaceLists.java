package org.skeinday.steps.store;

import static org.skeinday.platform.db.schema.Tables.STEPS_RUN;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.StationStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.Moment;
import org.skeinday.steps.PlaceSubject;
import org.skeinday.steps.RunBegun;

/**
 * The list of the winding place is walked through once for each place: what was answered at one says nothing of another. What
 * was answered before each place had a list of its own was said of the place that was at work when that list was begun.
 */
public final class PlaceLists {
    private PlaceLists() {}

    /** What the list of this place is about. @param station null where none is prepared: then it is the day's */
    public static String subject(String event, @Nullable String station) {
        return station == null ? event : new PlaceSubject(event, station).toString();
    }

    /** One for each place that is prepared, by name; where none is, the day's. */
    public static List<String> all(Tx tx, String event) {
        List<StationAdded> stations = StationStore.all(tx);
        return stations.isEmpty()
                ? List.of(event)
                : stations.stream().map(station -> subject(event, station.id())).toList();
    }

    /** The place that a subject names; where it names the day alone, as pages of before did, the one whose list that was. */
    public static String named(Tx tx, Checklist list, String subject) {
        return list.moment() != Moment.WINDING_PLACE
                        || PlaceSubject.parse(subject).isPresent()
                ? subject
                : subject(subject, ofTheDay(tx, list, subject).orElse(null));
    }

    /** Its own run, and the day's of before where that was of this place. */
    static List<String> runs(Tx tx, Checklist list, String subject) {
        String own = RunStore.id(list.id(), subject);
        return list.moment() != Moment.WINDING_PLACE
                ? List.of(own)
                : PlaceSubject.parse(subject)
                        .filter(about -> ofTheDay(tx, list, about.eventId())
                                .filter(about.stationId()::equals)
                                .isPresent())
                        .map(about -> List.of(own, RunStore.id(list.id(), about.eventId())))
                        .orElse(List.of(own));
    }

    private static Optional<String> ofTheDay(Tx tx, Checklist list, String event) {
        return tx.sql()
                .select(STEPS_RUN.STATION_ID)
                .from(STEPS_RUN)
                .where(STEPS_RUN.ID.eq(RunStore.id(list.id(), event)))
                .fetchOptional(STEPS_RUN.STATION_ID)
                .or(() -> StationStore.atWork(tx).map(StationAdded::id));
    }

    /** @param fact of a run that begins: the day's list of the winding place is of the one at work at that moment */
    static Optional<String> station(Tx tx, RunBegun fact) {
        boolean ofPlaces = ListStore.revision(tx, fact.listId(), fact.revision())
                .filter(list -> list.moment() == Moment.WINDING_PLACE)
                .isPresent();
        return !ofPlaces
                ? Optional.empty()
                : PlaceSubject.parse(fact.subjectId())
                        .map(PlaceSubject::stationId)
                        .or(() -> StationStore.atWork(tx).map(StationAdded::id));
    }
}
