package org.skeinday.attempt.web;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptCount;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.OfficialFlights;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.ResultSheet;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.attempt.store.FlightWindows;
import org.skeinday.attempt.store.HallWindows;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.FlightRules;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.standing.FlightTally;
import org.skeinday.standing.Scoring;
import org.skeinday.timing.FlightWindow;

/**
 * The day at hand as one snapshot: the latest event that is no practice, its entries, windows and attempts.
 *
 * @param hall whether it stands still: then no window runs
 * @param plannedWinds when the plan in force has winding begin, by entry's name and the rules' number
 */
record Today(
        EventAdded event,
        FlightRules rules,
        List<EntryAdded> entries,
        List<WindowAdded> windows,
        List<AttemptNow> attempts,
        Map<String, LiveAttempt> byId,
        HallWindows hall,
        Map<String, Long> plannedWinds,
        long nowMs) {

    static final String NO_EVENT = "There is no day yet. On the page Prepare a coach sets one up in about ten minutes.";

    /** Where it plays no part which of the attempts under way comes first. */
    static Optional<Today> read(Tx tx) {
        return read(tx, 0);
    }

    /** @param nowMs by which a window has closed or not */
    static Optional<Today> read(Tx tx, long nowMs) {
        return EventStore.next(tx).map(event -> read(tx, event, nowMs));
    }

    private static Today read(Tx tx, EventAdded event, long nowMs) {
        List<AttemptEvidence> known = LiveAttempts.evidenceOfEvent(tx, event.id());
        return new Today(
                event,
                FlightRulesStore.of(tx, event.id()),
                EntryStore.ofEvent(tx, event.id()),
                WindowStore.ofEvent(tx, event.id()),
                known.stream().map(AttemptEvidence::now).toList(),
                known.stream().map(LiveAttempt::of).collect(Collectors.toMap(LiveAttempt::id, Function.identity())),
                HallWindows.of(tx, event.id()),
                Assignments.plannedWinds(tx, event.id()),
                nowMs);
    }

    /** One of these attempts as every page shows it. */
    LiveAttempt live(String attempt) {
        return Objects.requireNonNull(byId.get(attempt));
    }

    /** Called and not over: it holds the floor or the bench, or its motor still has turns on or just broke. */
    boolean isOpen(AttemptNow attempt) {
        LiveAttempt live = live(attempt.id());
        return live.isUnderWay() || live.phase().name().isUrgent();
    }

    List<AttemptNow> of(EntryAdded entry) {
        return attempts.stream().filter(a -> a.entryId().equals(entry.id())).toList();
    }

    /** The window in which this entry flies: its own, or the one for all. */
    Optional<WindowAdded> window(EntryAdded entry) {
        return WindowAdded.of(windows, entry.id());
    }

    /** The same while the hall may stand still: as it would be if it went on at that moment. */
    Optional<WindowAdded> window(EntryAdded entry, long atMs) {
        return window(entry).map(window -> hall.goingOn(window, atMs));
    }

    boolean stopped() {
        return hall.standStill();
    }

    /** The window that an attempt is judged by: as it stood at its release, before it as it stands. */
    Optional<WindowAdded> windowOf(AttemptNow attempt) {
        return FlightWindows.of(attempt, () -> window(entry(attempt.entryId())));
    }

    boolean hasAttemptLeft(EntryAdded entry) {
        return mayStillFly(entry) && underWayOf(entry).isEmpty();
    }

    /** An attempt that is open does not count: what is needed after it is asked for. */
    boolean mayStillFly(EntryAdded entry) {
        return tally(entry).flightsLeft() > 0;
    }

    /** Flights that it may still call after the one that is under way. */
    int toCome(EntryAdded entry) {
        return OfficialFlights.toCome(of(entry), scoring());
    }

    /** What its attempts are as flights of the contest. */
    FlightTally tally(EntryAdded entry) {
        return OfficialFlights.tally(of(entry), scoring());
    }

    /** Who stands where. @param division of which the places are made; empty for all */
    ResultSheet sheet(Tx tx, String division) {
        Set<String> protested = ResultRecord.protests(tx).entrySet().stream()
                .filter(of -> of.getValue().stream().anyMatch(Protest::stillOpen))
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
        List<EntryAdded> shown = entries.stream()
                .filter(entry -> division.isEmpty() || division.equals(entry.division()))
                .toList();
        return ResultSheet.of(new ResultSheet.Known(event, scoring(), attempts, byId, protested), shown);
    }

    /** That entries are of, by name. */
    List<String> divisions() {
        return entries.stream()
                .map(EntryAdded::division)
                .filter(Objects::nonNull)
                .filter(division -> !division.isBlank())
                .distinct()
                .sorted()
                .toList();
    }

    Scoring scoring() {
        return Scoring.of(event, rules);
    }

    /** The same window with its last call; none that could run while the hall stands still. */
    Optional<FlightWindow> flightWindow(EntryAdded entry) {
        return stopped() ? Optional.empty() : window(entry).map(rules::window);
    }

    /** The attempt that is under way; the most urgent one when there are several. */
    Optional<AttemptNow> underWay() {
        return open().stream().findFirst();
    }

    /**
     * Attempts that are under way, the most urgent first, as every page has them: by phase; of one phase whose window closes
     * first, of one window who was called first. What is only called waits behind all others once its window has closed.
     */
    List<AttemptNow> open() {
        return attempts.stream()
                .filter(this::isOpen)
                .sorted(Comparator.comparing(
                                (AttemptNow a) -> live(a.id()).phase().name().urgency())
                        .thenComparing(this::isShut)
                        .thenComparingLong(
                                a -> windowOf(a).map(WindowAdded::closesAtMs).orElse(Long.MAX_VALUE))
                        .thenComparingLong(a -> a.calledAtMs() == null ? Long.MAX_VALUE : a.calledAtMs()))
                .toList();
    }

    /** Called, not wound yet, and its window has closed: others can still fly. */
    boolean isShut(AttemptNow attempt) {
        return live(attempt.id()).phase().name() == AttemptPhase.Name.CALLED
                && window(entry(attempt.entryId()), nowMs)
                        .filter(w -> w.closesAtMs() <= nowMs)
                        .isPresent();
    }

    /** Entry and attempt in words. */
    String title(AttemptNow attempt) {
        return entry(attempt.entryId()).name() + ", " + attempt.number().words();
    }

    /** The others that are under way, to be gone to: each with its phase. @param shown id of the one that a page is about */
    List<NowView.Choice> beside(String shown) {
        return open().stream()
                .filter(a -> !a.id().equals(shown))
                .map(a -> new NowView.Choice(
                        a.id(),
                        title(a) + ": " + PhaseWords.of(live(a.id())) + (isShut(a) ? ", its window has closed" : "")))
                .toList();
    }

    /** The attempt that was closed last; empty while another is under way. */
    Optional<AttemptNow> justClosed() {
        return underWay().isPresent()
                ? Optional.empty()
                : attempts.stream()
                        .filter(a -> live(a.id()).phase().name() == AttemptPhase.Name.OFFICIAL
                                && a.officialMs() != null
                                && a.closedAtMs() != null)
                        .max(Comparator.comparingLong(a -> a.closedAtMs() == null ? 0 : a.closedAtMs()));
    }

    EntryAdded entry(String id) {
        return entries.stream().filter(e -> e.id().equals(id)).findFirst().orElseThrow();
    }

    /** The entries in the order in which their windows open. */
    List<EntryAdded> byWindow() {
        return entries.stream()
                .sorted(Comparator.comparingLong((EntryAdded e) ->
                                window(e).map(WindowAdded::opensAtMs).orElse(Long.MAX_VALUE))
                        .thenComparing(Today::callOrder)
                        .thenComparing(EntryAdded::name))
                .toList();
    }

    /** Of the attempt that this entry calls next. */
    AttemptNumber nextNumber(EntryAdded entry) {
        List<AttemptCount.Tried> own =
                of(entry).stream().map(AttemptCount.Tried::of).toList();
        return AttemptCount.of(own, scoring(), true).next();
    }

    /** Why nobody can be offered as the next one. */
    String whyNone() {
        boolean left = entries.stream().anyMatch(this::hasAttemptLeft);
        return left
                ? "Every window has closed. An entry that the rules still let fly can be called from the list."
                : "Every entry has had its attempts.";
    }

    static int callOrder(EntryAdded entry) {
        Integer order = entry.callOrder();
        return order == null ? Integer.MAX_VALUE : order;
    }

    /** The entry whose attempt comes next. */
    Optional<EntryAdded> nextEntry(long nowMs) {
        return new TurnOrder(this).next(nowMs);
    }

    /** Own entries that may still fly, in the order in which their next attempts come. */
    List<EntryAdded> ownByTurn() {
        return new TurnOrder(this).own();
    }

    /** Whether an attempt of it is under way that has a motor. */
    boolean hasMotorInHand(EntryAdded entry) {
        return underWayOf(entry).filter(a -> a.motorId() != null).isPresent();
    }

    /** The attempt of an entry that is called and not over. */
    Optional<AttemptNow> underWayOf(EntryAdded entry) {
        return of(entry).stream().filter(a -> live(a.id()).isUnderWay()).findFirst();
    }
}
