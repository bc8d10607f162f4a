package org.skeinday.attempt.web;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;

/** The event that people work on, and the others that they could. */
record EventsAtHand(EventAdded atHand, List<EventAdded> others) {

    static EventsAtHand beside(Tx tx, EventAdded atHand) {
        return new EventsAtHand(
                atHand,
                EventStore.all(tx).stream()
                        .filter(event -> !event.ofPractice() && !event.id().equals(atHand.id()))
                        .toList());
    }

    /** That can be worked on: the one at hand, then the others by day; empty where there is no choice. */
    List<NowView.Choice> choices() {
        return others.isEmpty()
                ? List.of()
                : Stream.concat(Stream.of(atHand), others.stream())
                        .map(event -> new NowView.Choice(event.id(), event.name() + ", " + event.day()))
                        .toList();
    }

    /** The day's event, where people still work on another day's. @param day in ISO form */
    NowView.@Nullable Choice of(String day) {
        return atHand.day().equals(day)
                ? null
                : others.stream()
                        .filter(event -> event.day().equals(day))
                        .findFirst()
                        .map(event -> new NowView.Choice(event.id(), event.name()))
                        .orElse(null);
    }
}
