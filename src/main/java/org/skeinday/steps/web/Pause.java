package org.skeinday.steps.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.Gate;
import org.skeinday.steps.ModelSubject;
import org.skeinday.steps.Moment;
import org.skeinday.steps.Run;
import org.skeinday.steps.RunFact;
import org.skeinday.steps.Step;
import org.skeinday.steps.action.GateAsked;
import org.skeinday.steps.store.ListStore;
import org.skeinday.steps.store.PlaceLists;
import org.skeinday.steps.store.RunStore;

/** Which list belongs to this pause, and which others there are: by the state of the day and of the attempt under way. */
final class Pause {
    /** So long the list after landing stands in front once the attempt is closed (own default). */
    private static final long AFTER_CLOSING_MS = 20 * 60_000;

    private final Tx tx;
    private final EventAdded event;
    private final List<StationAdded> stations;
    private final List<AtHand.Attempt> attempts;
    private final Optional<AtHand.Attempt> attempt;
    private final boolean isOver;
    private final String today;

    /** @param about what it is for, in words; empty for the day */
    record Place(Run run, String subject, String about) {
        Checklist list() {
            return run.list();
        }

        Moment moment() {
            return list().moment();
        }

        /** Whether something happened in it after that moment. */
        boolean wasTicked(long sinceMs) {
            List<RunFact> facts = run.facts();
            return !facts.isEmpty() && facts.get(facts.size() - 1).atMs() > sinceMs;
        }
    }

    /** @param today ISO date in the hall @param about what was asked for, an attempt perhaps */
    Pause(Tx tx, EventAdded event, AtHand atHand, String today, String about) {
        this.tx = tx;
        this.event = event;
        this.stations = Apart.made("Which winding places there are", () -> StationStore.all(tx), words -> List.of());
        this.attempts = atHand.attempts(tx);
        this.attempt = asked(about)
                .or(() -> at(AtHand.Stage.CALLED))
                .or(() -> attempts.stream().findFirst());
        this.isOver = atHand.isOver(tx);
        this.today = today;
    }

    private Optional<AtHand.Attempt> asked(String about) {
        return attempts.stream().filter(a -> a.id().equals(about)).findFirst();
    }

    /** Of several the one that something is asked of now. */
    private Optional<AtHand.Attempt> at(AtHand.Stage stage) {
        return attempts.stream().filter(a -> a.stage() == stage).findFirst();
    }

    /** Whether the first crank turn was made and the release was not. */
    boolean isQuiet() {
        return attempt.filter(a -> a.stage() == AtHand.Stage.WOUND).isPresent();
    }

    Optional<AtHand.Attempt> attempt() {
        return attempt;
    }

    Optional<AtHand.Attempt> called() {
        return attempt.filter(a -> a.stage() == AtHand.Stage.CALLED);
    }

    /** In the order of the day; of an attempt's lists those that can be walked through now. */
    List<Place> all() {
        List<Place> places = new ArrayList<>();
        for (Checklist list : ListStore.all(tx)) {
            switch (list.moment()) {
                case MODEL_INSPECTION ->
                    models().forEach(m ->
                            places.add(place(list, new ModelSubject(event.id(), m.id()).toString(), m.name())));
                case BEFORE_WINDING, BEFORE_LOADING ->
                    attempts.stream()
                            .filter(a -> a.stage() == AtHand.Stage.CALLED)
                            .forEach(a -> places.add(place(list, a.id(), a.title())));
                case AFTER_LANDING ->
                    attempts.stream()
                            .filter(a -> a.stage().compareTo(AtHand.Stage.LANDED) >= 0)
                            .forEach(a -> places.add(place(list, a.id(), a.title())));
                case WINDING_PLACE -> places.addAll(ofPlaces(list));
                case RELEASE -> {} // by hand signals, on paper only
                default -> places.add(place(list, event.id(), ""));
            }
        }
        return places;
    }

    /** One for each winding place; those that are at work first. */
    private List<Place> ofPlaces(Checklist list) {
        return stations.isEmpty()
                ? List.of(place(list, event.id(), ""))
                : stations.stream()
                        .sorted(Comparator.comparing(station -> station.meter() == null))
                        .map(station -> place(
                                list,
                                PlaceLists.subject(event.id(), station.id()),
                                stations.size() > 1 ? station.name() : ""))
                        .toList();
    }

    /** That of the attempt which is called, whatever other places there are. */
    Optional<Place> ofItsPlace(List<Place> all) {
        return called().flatMap(a -> {
            String subject = PlaceLists.subject(event.id(), a.station());
            return all.stream()
                    .filter(p ->
                            p.moment() == Moment.WINDING_PLACE && p.subject().equals(subject))
                    .findFirst();
        });
    }

    /** Of a place without a meter nothing is asked while another has one, before somebody is called to it. */
    private boolean isAtWork(Place place) {
        return stations.stream().allMatch(station -> station.meter() == null)
                || stations.stream()
                        .filter(station -> station.meter() != null)
                        .anyMatch(station ->
                                PlaceLists.subject(event.id(), station.id()).equals(place.subject()));
    }

    /** What was asked for by its address; one that names the day alone is of the place whose list that was. */
    Optional<Place> asked(List<Place> all, String list, String subject) {
        return all.stream()
                .filter(p -> p.list().id().equals(list) && p.subject().equals(PlaceLists.named(tx, p.list(), subject)))
                .findFirst();
    }

    private Place place(Checklist list, String subject, String about) {
        return new Place(RunStore.of(tx, list, subject), subject, about);
    }

    private List<ModelAdded> models() {
        return EntryStore.ofEvent(tx, event.id()).stream()
                .filter(EntryAdded::own)
                .flatMap(entry -> ModelStore.ofEntry(tx, entry.id()).stream())
                .distinct()
                .toList();
    }

    /** Empty when nothing is asked just now. */
    Optional<Place> now(List<Place> all, long nowMs) {
        if (isQuiet()
                || attempt.filter(a -> a.stage() == AtHand.Stage.IN_THE_AIR).isPresent()) {
            return Optional.empty();
        }
        if (called().isPresent()) {
            return ofItsPlace(all)
                    .filter(p -> isWaitedFor(p) || isStoodAt(p, nowMs))
                    .or(() -> open(all, Moment.BEFORE_WINDING))
                    .or(() -> open(all, Moment.BEFORE_LOADING));
        }
        return afterLanding(all, nowMs)
                .or(() -> event.day().compareTo(today) > 0 ? open(all, Moment.PACKING) : Optional.empty())
                .or(() -> isOver ? open(all, Moment.END_OF_DAY) : Optional.empty())
                .or(() -> isOver ? Optional.empty() : ofTheMorning(all));
    }

    /** Critical items are open, and the supervising adult has not answered for them. */
    private boolean isWaitedFor(Place place) {
        return place.run().open().stream().anyMatch(Step::critical)
                && called().filter(a -> verdict(a).passed().isPresent()).isEmpty();
    }

    /** Whether winding may start. */
    Gate.Verdict verdict(AtHand.Attempt of) {
        return GateAsked.startWinding(tx, new GateAsked.Wind(event.id(), of.id(), of.station()));
    }

    /** Somebody has just ticked the last critical item: the others of the list are not taken away under the finger. */
    private static boolean isStoodAt(Place place, long nowMs) {
        return NoticesPresenter.isLeftOver(place) && place.wasTicked(nowMs - ChecksPages.READING_MS);
    }

    private Optional<Place> afterLanding(List<Place> all, long nowMs) {
        return open(all, Moment.AFTER_LANDING)
                .filter(p -> attempt.filter(a -> a.closedMs() == 0 || nowMs - a.closedMs() < AFTER_CLOSING_MS)
                        .isPresent());
    }

    private Optional<Place> ofTheMorning(List<Place> all) {
        return open(all, Moment.ARRIVAL)
                .or(() -> open(all.stream().filter(this::isAtWork).toList(), Moment.WINDING_PLACE))
                .or(() -> open(all, Moment.MODEL_INSPECTION));
    }

    private Optional<Place> open(List<Place> all, Moment moment) {
        return all.stream()
                .filter(p -> p.moment() == moment && !p.run().isComplete())
                .filter(p -> !moment.isOfEachAttempt()
                        || attempt.filter(a -> a.id().equals(p.subject())).isPresent())
                .findFirst();
    }

    /** What is said where no list is. */
    String none(boolean read) {
        if (isQuiet()) {
            return "Nothing is asked between the first crank turn and the release.";
        }
        return called().isPresent() && read
                ? "All is read. Start winding."
                : attempt.filter(a -> a.stage() == AtHand.Stage.IN_THE_AIR).isPresent()
                        ? "In the air. The next list is after the landing."
                        : "Nothing is open at this pause.";
    }
}
