package org.skeinday.attempt.web;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.Stations;
import org.skeinday.attempt.store.WoundAlone;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.units.PlainNumber;

/**
 * Where an attempt is wound, and where else it could be while that can be chosen.
 *
 * @param at id of its place; empty where that cannot be chosen
 * @param others the other places with their meter and winder; empty from the first crank turn on
 */
public record WindingPlaces(String at, List<Other> others) {
    private static final String WHAT = "The winding place";

    /** Nothing can be chosen. */
    public static final WindingPlaces ONE = new WindingPlaces("", List.of());

    /** @param beside ids of the attempts that are there, parted by blanks: whoever comes second is told of one that is new */
    public record Other(String id, String words, String beside) {}

    /** @param nowMs until which a wind without an attempt counts as under way, ms since 1970 UTC */
    public static WindingPlaces of(Tx tx, AttemptNow attempt, LiveAttempt live, long nowMs) {
        return live.phase().name() != AttemptPhase.Name.CALLED
                ? ONE
                : Apart.made(WHAT, () -> choices(tx, attempt, nowMs), words -> ONE); // the line beside it says so
    }

    private static WindingPlaces choices(Tx tx, AttemptNow attempt, long nowMs) {
        boolean own = EntryStore.find(tx, attempt.entryId()).orElseThrow().own();
        if (!own) {
            return ONE;
        }
        Stations places = Stations.in(tx, attempt.eventId());
        Optional<StationAdded> at = places.of(attempt);
        List<WoundAlone> alone = WoundAlone.now(tx, attempt.eventId(), nowMs);
        return new WindingPlaces(
                at.map(StationAdded::id).orElse(""),
                places.all().stream()
                        .filter(station -> at.filter(station::equals).isEmpty())
                        .map(station -> other(tx, station, places.openAt(station, attempt), alone))
                        .toList());
    }

    private static Other other(Tx tx, StationAdded station, List<String> there, List<WoundAlone> alone) {
        return new Other(
                station.id(), words(station) + taken(tx, there) + wound(station, alone), String.join(" ", there));
    }

    /** For practice, or until it breaks: whoever chooses sees that somebody cranks there. */
    private static String wound(StationAdded station, List<WoundAlone> alone) {
        return alone.stream()
                .filter(one -> one.isAt(station.id()))
                .map(one -> " · motor " + one.motor().tag() + " is wound there without an attempt")
                .collect(Collectors.joining());
    }

    /**
     * All of them, for a motor that is wound without an attempt; empty where there are not two.
     *
     * @param nowMs until which another such wind counts as under way, ms since 1970 UTC
     */
    public static List<NowView.Choice> all(Tx tx, long nowMs) {
        return Apart.made(WHAT, () -> choices(tx, nowMs), words -> List.of());
    }

    private static List<NowView.Choice> choices(Tx tx, long nowMs) {
        List<StationAdded> stations = StationStore.all(tx);
        if (stations.size() < 2) {
            return List.of();
        }
        Optional<EventAdded> event = EventStore.next(tx);
        Optional<Stations> places = event.map(one -> Stations.in(tx, one.id()));
        List<WoundAlone> alone = WoundAlone.now(tx, event.map(EventAdded::id).orElse(""), nowMs);
        return stations.stream()
                .map(station -> new NowView.Choice(
                        station.id(),
                        words(station)
                                + taken(
                                        tx,
                                        places.map(all -> all.openAt(station)).orElse(List.of()))
                                + wound(station, alone)))
                .toList();
    }

    /** A place that is known, as a line; nothing where there are not two. */
    public static Optional<NowView.Line> line(Tx tx, StationAdded station) {
        return StationStore.all(tx).size() < 2
                ? Optional.empty()
                : Optional.of(new NowView.Line("wound at", words(station)));
    }

    /** Where it is wound, or was; nothing where there are not two places, or nobody knows. */
    public static Optional<NowView.Line> line(Tx tx, LiveAttempt attempt) {
        return Apart.made(WHAT, () -> at(tx, attempt), CardLines::beside);
    }

    private static Optional<NowView.Line> at(Tx tx, LiveAttempt attempt) {
        Optional<StationAdded> at = EntryStore.find(tx, attempt.entryId())
                .filter(EntryAdded::own)
                .flatMap(entry -> attempt.isToFly()
                        ? Stations.of(tx, entry, attempt.id())
                        : Stations.known(tx, entry, attempt.id()));
        return StationStore.all(tx).size() < 2
                ? Optional.empty()
                : at.map(station -> new NowView.Line("wound at", words(station)));
    }

    /** Where an attempt of this entry is to be wound that nobody has called; nothing where there are not two places. */
    public static Optional<NowView.Line> next(Tx tx, EntryAdded entry) {
        return Apart.made(WHAT, () -> nextAt(tx, entry), CardLines::beside);
    }

    private static Optional<NowView.Line> nextAt(Tx tx, EntryAdded entry) {
        return StationStore.all(tx).size() < 2
                ? Optional.empty()
                : Stations.of(tx, entry, null).map(station -> new NowView.Line("wound at", words(station)));
    }

    private static String words(StationAdded station) {
        String meter = station.meter() == null ? "no meter" : station.meter() + division(station);
        Double ratio = station.winderRatio();
        return station.name() + " · " + meter + (ratio == null ? "" : " · winder " + PlainNumber.of(ratio) + " to 1");
    }

    private static String division(StationAdded station) {
        return station.divisionTyped() == null ? "" : ", division " + station.divisionTyped();
    }

    /** One that broke after it was given up keeps its place like one that is still to be run back. */
    private static String isThere(AttemptPhase phase) {
        boolean givenUp = phase instanceof AttemptPhase.Broke broke && broke.givenUp();
        return switch (givenUp ? AttemptPhase.Name.RUN_BACK : phase.name()) {
            case CALLED -> " is called there";
            case RUN_BACK -> " is to be run back there";
            default -> " is there";
        };
    }

    private static String taken(Tx tx, List<String> attempts) {
        String who = attempts.stream()
                .flatMap(id -> LiveAttempts.find(tx, id).stream())
                .map(other -> EntryStore.find(tx, other.entryId())
                                .map(EntryAdded::name)
                                .orElseThrow()
                        + isThere(other.phase()))
                .collect(Collectors.joining(", "));
        return who.isEmpty() ? "" : " · " + who;
    }
}
