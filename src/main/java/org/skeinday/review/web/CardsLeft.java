package org.skeinday.review.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.HallWindows;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.FlightRow;
import org.skeinday.review.Named;
import org.skeinday.standing.Scoring;

/** What an event's record still lacks: cards that were not keyed in, and flights without turns or time. */
final class CardsLeft {
    private final Tx tx;
    private final Named event;
    private final List<FlightRow> flights;
    private final ZoneId zone;
    private final long nowMs;

    CardsLeft(Tx tx, Named event, List<FlightRow> flights, ZoneId zone, long nowMs) {
        this.nowMs = nowMs;
        this.tx = tx;
        this.event = event;
        this.flights = flights;
        this.zone = zone;
    }

    List<EveningView.Link> links() {
        List<EveningView.Link> links = new ArrayList<>(cards());
        flights.stream()
                .filter(r -> r.flight().isAttempt() && r.flight().figures().isEmpty())
                .forEach(r ->
                        links.add(new EveningView.Link(name(r) + " lacks " + lacks(r) + ".", FlightTable.address(r))));
        return links;
    }

    /** Key in takes the cards of the event that is prepared last. While an entry may still fly, none is missing. */
    private List<EveningView.Link> cards() {
        return EventStore.next(tx).filter(e -> e.id().equals(event.id())).stream()
                .flatMap(e -> EntryStore.ofEvent(tx, e.id()).stream()
                        .filter(EntryAdded::own)
                        .filter(this::hasFlown)
                        .filter(entry -> left(e, entry) > 0)
                        .map(entry -> new EveningView.Link(
                                entry.name() + ": " + left(e, entry) + " of " + e.attempts()
                                        + " attempts are not in the record. Key in the cards that were flown.",
                                "/key-in")))
                .toList();
    }

    /** Whether its window has closed, which waits while the hall stands still; an entry without one may have flown at any time. */
    private boolean hasFlown(EntryAdded entry) {
        return HallWindows.of(tx, entry.eventId(), entry.id(), nowMs)
                .map(w -> w.closesAtMs() <= nowMs)
                .orElse(true);
    }

    /** Attempts of the rules that were never tried: of one that was abandoned, or might be repeated, nothing is missing. */
    private long left(EventAdded of, EntryAdded entry) {
        Scoring scoring = Scoring.of(of, FlightRulesStore.of(tx, of.id()));
        long tried = AttemptStore.ofEvent(tx, of.id()).stream()
                .filter(a -> a.entryId().equals(entry.id()))
                .map(a -> a.number().rule())
                .distinct()
                .count();
        return scoring.flights().flights() - tried;
    }

    private String name(FlightRow row) {
        Named entry = row.flown().entry();
        return (entry == null ? "The flight" : entry.name()) + ", " + FlightTable.label(row, zone);
    }

    private static String lacks(FlightRow row) {
        List<String> lacks = new ArrayList<>();
        if (row.flight().launchCrankTurns() == null) {
            lacks.add("turns wound and backed off");
        }
        if (row.flight().remainingCrankTurns() == null) {
            lacks.add("turns remaining");
        }
        if (row.flight().timeMs() == null) {
            lacks.add("a time");
        }
        return lacks.isEmpty() ? "turns that fit together" : String.join(", ", lacks);
    }
}
