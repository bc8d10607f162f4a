package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.skeinday.attempt.HallResumed;
import org.skeinday.attempt.HallStopped;
import org.skeinday.attempt.StopReason;
import org.skeinday.attempt.store.HallStops;
import org.skeinday.attempt.store.HallWindows;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/**
 * Everything stands still: nothing is called or wound, what is wound is run back, what flies is timed to its end, windows
 * wait. When it goes on, each window of the day that had not closed has moved by as long as it stood still,
 * but for those that were set meanwhile. On a practice evening the hall is stopped as on any day.
 */
public final class StopHall {
    private static final Set<String> EVERYWHERE = Set.of("attempts", "motors", "winds", "checks", "first", "prepare");

    /** @param reason a word of {@link StopReason} @param words what else is to be said; may be empty */
    record Stop(String reason, String words) {}

    /** @param stop id of the stop that the page showed */
    record Resume(String stop) {}

    private StopHall() {}

    /** Whose stop it was is told by the event's own id; on a practice evening by the hall's. */
    static String ofDay(Tx tx) {
        return EventStore.next(tx).map(EventAdded::id).orElse("hall");
    }

    static Decision stop(Tx tx, ActContext context, Stop stop) {
        HallStopped stands = HallStops.now(tx).orElse(null);
        if (stands != null) {
            return new Decision.Outdated("The hall is stopped already: " + stands.why() + ".");
        }
        String words = stop.words().strip();
        if (words.length() > AttemptActions.LONGEST_REASON) {
            return Decision.refused("stop-words", AttemptActions.tooLong(words));
        }
        HallStopped fact;
        try {
            fact = new HallStopped(
                    context.ownId(),
                    EventStore.next(tx).map(EventAdded::id).orElse(HallStopped.PRACTICE),
                    context.now().toEpochMilli(),
                    stop.reason(),
                    words,
                    context.personOrNull(),
                    null);
        } catch (IllegalArgumentException e) {
            return Decision.refused("stop-words", String.valueOf(e.getMessage()));
        }
        List<Fact> facts = List.of(Fact.of("hall.stopped", fact), PhaseGate.acted(context, ofDay(tx), "Stop the hall"));
        return new Decision.Decided(facts, Map.of(), EVERYWHERE);
    }

    static Decision resume(Tx tx, ActContext context, Resume resume) {
        Optional<HallStopped> now = HallStops.now(tx);
        if (now.filter(stop -> stop.id().equals(resume.stop())).isEmpty()) {
            return new Decision.Outdated("The hall goes on already: look again.");
        }
        HallStopped stop = now.get();
        long atMs = Math.max(stop.atMs(), context.now().toEpochMilli());
        List<Fact> facts = new ArrayList<>();
        HallWindows windows = HallWindows.of(tx, stop.eventId());
        for (WindowAdded window : WindowStore.ofEvent(tx, stop.eventId())) {
            WindowAdded shifted = windows.goingOn(window, atMs);
            if (!shifted.equals(window)) {
                facts.add(Fact.of("window.changed", shifted));
            }
        }
        facts.add(Fact.of("hall.resumed", new HallResumed(stop.id(), atMs)));
        facts.add(PhaseGate.acted(context, ofDay(tx), "The hall goes on"));
        return new Decision.Decided(facts, Map.of(), EVERYWHERE);
    }

    /** Why nothing begins while the hall stands still; empty while it does not. */
    public static Optional<Decision> refused(Tx tx, String event) {
        return HallStops.now(tx, event).map(StopHall::refused);
    }

    /** The same for what belongs to no event: winds for practice and break tests. */
    public static Optional<Decision> refused(Tx tx) {
        return HallStops.now(tx).map(StopHall::refused);
    }

    private static Decision refused(HallStopped stop) {
        return Decision.refused(
                "The hall is stopped (" + stop.why() + "): nothing is called or wound before it goes on");
    }
}
