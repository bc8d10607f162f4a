package org.skeinday.attempt.web;

import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.action.SaidInLists;
import org.skeinday.attempt.action.TestedAt;
import org.skeinday.attempt.action.TodaysPull;
import org.skeinday.attempt.action.TodaysStretch;
import org.skeinday.attempt.action.WindingGate;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.hall.web.MotorsOfDay;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.steps.web.AtHand;
import org.skeinday.units.Length;
import org.skeinday.units.UnitSystem;

/** What the pages Checks and Hall ask of the day's attempts: own ones only. */
public final class ChecksBeside implements AtHand, MotorsOfDay {
    private final Clock clock;

    public ChecksBeside(Clock clock) {
        this.clock = clock;
    }

    @Override
    public List<Attempt> attempts(Tx tx) {
        return Today.read(tx, clock.millis()).stream()
                .flatMap(today -> own(tx, today))
                .toList();
    }

    private static Stream<Attempt> own(Tx tx, Today today) {
        List<AttemptNow> open = today.open().stream()
                .filter(a -> today.entry(a.entryId()).own())
                .toList();
        return open.isEmpty()
                ? today.attempts().stream()
                        .filter(a -> today.entry(a.entryId()).own()
                                && today.live(a.id()).phase().name() == AttemptPhase.Name.OFFICIAL)
                        .max(Comparator.comparingLong(a -> moment(a.closedAtMs())))
                        .stream()
                        .map(a -> of(tx, today, a))
                : open.stream().map(a -> of(tx, today, a));
    }

    private static Attempt of(Tx tx, Today today, AttemptNow a) {
        return new Attempt(
                a.id(),
                today.title(a),
                Apart.<@Nullable String>made(
                        "The winding place of an attempt",
                        () -> WindingGate.wind(tx, a).station(),
                        words -> null),
                stage(today.live(a.id()).phase().name()),
                Strips.of(today.live(a.id())),
                moment(a.closedAtMs()));
    }

    private static Stage stage(AttemptPhase.Name phase) {
        return switch (phase) {
            case NEXT, CALLED -> Stage.CALLED;
            case WINDING, HOLDING, BROKE, RUN_BACK -> Stage.WOUND;
            case IN_THE_AIR -> Stage.IN_THE_AIR;
            case LANDED -> Stage.LANDED;
            case OFFICIAL, ABANDONED, VOID -> Stage.CLOSED;
        };
    }

    private static long moment(@Nullable Long ms) {
        return ms == null ? 0 : ms;
    }

    @Override
    public boolean isOver(Tx tx) {
        return Today.read(tx, clock.millis())
                .filter(today ->
                        today.entries().stream().filter(EntryAdded::own).noneMatch(today::mayStillFly))
                .isPresent();
    }

    @Override
    public Optional<Length> longestStretch(Tx tx) {
        return Apart.made("The longest stretch", () -> TodaysStretch.longest(tx), words -> Optional.empty());
    }

    @Override
    public Optional<String> pull(Tx tx) {
        return Apart.made("What the strongest motor pulls", () -> TodaysPull.words(tx), Optional::of);
    }

    @Override
    public OptionalDouble testedAt(Tx tx) {
        return Apart.made("How warm the tests were", () -> TestedAt.celsius(tx), words -> OptionalDouble.empty());
    }

    /** Of the winding place of the attempt or of the list; for any other list of the one at work. */
    @Override
    public Optional<Double> winderRatio(Tx tx, String subject) {
        return place(tx, subject).map(StationAdded::winderRatio);
    }

    @Override
    public UnitSystem units(Tx tx, String subject, UnitSystem team) {
        return place(tx, subject).map(place -> place.units(team)).orElse(team);
    }

    /** None where it cannot be read. */
    private static Optional<StationAdded> place(Tx tx, String subject) {
        return Apart.made("The winding place of a list", () -> read(tx, subject), words -> Optional.empty());
    }

    private static Optional<StationAdded> read(Tx tx, String subject) {
        return AttemptStore.find(tx, subject)
                .map(attempt ->
                        EntryStore.find(tx, attempt.entryId()).flatMap(entry -> Stations.of(tx, entry, attempt.id())))
                .orElseGet(() -> SaidInLists.station(tx, subject));
    }
}
