package org.skeinday.attempt.action;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** An entry's window starts when the official says so: one tap, which can be put right by seconds. It keeps its length. */
final class StartWindow {
    private static final Set<String> TOPICS = Set.of("attempts", "winds", "checks", "prepare");
    /** Own default: more than somebody is late with a tap is another window, and is written in Prepare. */
    private static final int MOST_SECONDS = 60;

    private static final long MINUTE_MS = 60_000;

    /** The official says that the window starts now. @param entry id */
    record Starts(String entry) {}

    /** The tap came too late or too early. @param seconds to move both ends by; negative is earlier */
    record Moved(String entry, int seconds) {}

    private StartWindow() {}

    static Decision starts(Tx tx, ActContext context, Starts starts) {
        EntryAdded entry = EntryStore.find(tx, starts.entry()).orElse(null);
        if (entry == null) {
            return Decision.unknown("There is no such entry; look again");
        }
        EventAdded event = EventStore.find(tx, entry.eventId()).orElseThrow();
        long nowMs = context.now().toEpochMilli();
        Optional<WindowAdded> window = WindowStore.of(tx, event.id(), entry.id());
        if (window.isEmpty()) {
            return event.windowMinutes() == 0
                    ? Decision.refused("entry", "The event has no length of a window: write the window in Prepare")
                    : decided(
                            "window.added",
                            new WindowAdded(
                                    context.ownId(),
                                    event.id(),
                                    entry.id(),
                                    nowMs,
                                    nowMs + event.windowMinutes() * MINUTE_MS));
        }
        return decided(
                "window.changed", moved(window.get(), nowMs - window.get().opensAtMs()));
    }

    static Decision moved(Tx tx, ActContext context, Moved moved) {
        if (moved.seconds() == 0 || Math.abs(moved.seconds()) > MOST_SECONDS) {
            return Decision.refused(
                    "entry",
                    "A tap is put right by 1 to " + MOST_SECONDS + " s; a window that was moved is written in Prepare");
        }
        return EntryStore.find(tx, moved.entry())
                .flatMap(entry -> WindowStore.of(tx, entry.eventId(), entry.id()))
                .map(window -> decided("window.changed", moved(window, moved.seconds() * 1000L)))
                .orElseGet(() -> Decision.unknown("There is no window of such an entry; look again"));
    }

    private static WindowAdded moved(WindowAdded window, long byMs) {
        return new WindowAdded(
                window.id(), window.eventId(), window.entryId(), window.opensAtMs() + byMs, window.closesAtMs() + byMs);
    }

    private static Decision decided(String kind, WindowAdded window) {
        return new Decision.Decided(List.of(Fact.of(kind, window)), Map.of(), TOPICS);
    }
}
