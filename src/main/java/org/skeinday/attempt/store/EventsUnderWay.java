package org.skeinday.attempt.store;

import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.EventAtHand;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Fact;

/** What keeps all pages at one event: an attempt under way, people after a break, turns that are still on, a stopped hall. */
public final class EventsUnderWay {
    private EventsUnderWay() {}

    /** An attempt of it that is called and not over. */
    public static Optional<AttemptNow> open(Tx tx, EventAdded event) {
        return AttemptStore.ofEvent(tx, event.id()).stream()
                .filter(a -> a.state().isOpen())
                .findFirst();
    }

    /** Whether people after a break, or turns that are still on, wait for an answer. */
    public static boolean comesFirst(Tx tx, EventAdded event) {
        return BreakRecord.mayComeFirst(tx, event.id()).stream()
                .flatMap(id -> LiveAttempts.find(tx, id).stream())
                .anyMatch(live -> live.phase().name().isUrgent());
    }

    public static boolean isStopped(Tx tx, EventAdded event) {
        return HallStops.now(tx, event.id()).isPresent();
    }

    /**
     * For whatever adds events: one of a later day must not take what is under way out of sight.
     *
     * @param added facts of the act
     */
    public static Optional<Fact> stays(Tx tx, List<Fact> added) {
        return added.stream().noneMatch(fact -> fact.kind().equals("event.added"))
                ? Optional.empty()
                : EventStore.next(tx)
                        .filter(event -> open(tx, event).isPresent() || comesFirst(tx, event) || isStopped(tx, event))
                        .map(event -> Fact.of("event.at-hand", new EventAtHand(event.id())));
    }
}
