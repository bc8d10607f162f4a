package org.skeinday.paper.web;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.skeinday.attempt.AttemptCount;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.OfficialFlights;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.HallWindows;
import org.skeinday.attempt.web.PageWords;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.standing.Scoring;

/** Makes the cards on which timekeepers and host write, one for each attempt that any entry still has. */
final class HostCards {
    private final Tx tx;
    private final Clock clock;

    HostCards(Tx tx, Clock clock) {
        this.tx = tx;
        this.clock = clock;
    }

    HostCardsView view() {
        return EventStore.next(tx).map(this::view).orElseGet(() -> none("There is no event yet."));
    }

    private static HostCardsView none(String why) {
        return new HostCardsView("", "", why, "", List.of(), List.of());
    }

    private HostCardsView view(EventAdded event) {
        if (event.dayKind() != DayKind.HOSTING) {
            return none("Elsewhere the host has cards of its own; these are for a day that you host.");
        }
        List<HostCardsView.Card> cards = cards(event);
        return new HostCardsView(
                event.name() + ", " + event.day(),
                PageWords.rules(event),
                cards.isEmpty() ? "No entry has an attempt left." : "",
                PageWords.second(clock.millis(), clock.getZone()),
                IntStream.rangeClosed(1, event.timekeepers()).boxed().toList(),
                cards);
    }

    private List<HostCardsView.Card> cards(EventAdded event) {
        Scoring scoring = Scoring.of(event, FlightRulesStore.of(tx, event.id()));
        List<AttemptNow> attempts = AttemptStore.ofEvent(tx, event.id());
        List<HostCardsView.Card> cards = new ArrayList<>();
        for (EntryAdded entry : EntryStore.ofEvent(tx, event.id())) {
            List<AttemptNow> own = attempts.stream()
                    .filter(a -> a.entryId().equals(entry.id()))
                    .toList();
            AttemptNumber number = AttemptCount.of(
                            own.stream().map(AttemptCount.Tried::of).toList(), scoring, true)
                    .next();
            for (int left = OfficialFlights.toCome(own, scoring); left > 0; left--) {
                cards.add(
                        new HostCardsView.Card(entry.name() + ", " + number.words(), of(entry), window(event, entry)));
                number = number.following();
            }
        }
        return cards;
    }

    private static String of(EntryAdded entry) {
        String division = entry.division();
        return entry.team() + (division == null || division.isBlank() ? "" : " · " + division);
    }

    private String window(EventAdded event, EntryAdded entry) {
        return HallWindows.of(tx, event.id(), entry.id(), clock.millis())
                .map(w -> PageWords.clock(w.opensAtMs(), clock.getZone()) + " – "
                        + PageWords.clock(w.closesAtMs(), clock.getZone()))
                .orElse("");
    }
}
