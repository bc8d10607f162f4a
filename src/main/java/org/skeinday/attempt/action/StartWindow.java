package org.skeinday.attempt.action;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/**
 * An entry's window starts when the official says so: one tap, which can be put right by seconds. It keeps its length. Once
 * it was tapped and is open, a second tap would move what runs already: whoever comes second is told so.
 */
public final class StartWindow {
    private static final Set<String> TOPICS = Set.of("attempts", "winds", "checks", "prepare");
    /** Own default: more than somebody is late with a tap is another window, and is written in Prepare. */
    private static final int MOST_SECONDS = 60;

    private static final long MINUTE_MS = 60_000;
    private static final DateTimeFormatter SECOND = DateTimeFormatter.ofPattern("HH:mm:ss");

    /** The official says that the window starts now. @param entry id */
    record Starts(String entry) {}

    /**
     * The tap came too late or too early.
     *
     * @param seconds to move both ends by; negative is earlier
     * @param seen when the window opened as the page showed it, ms since 1970 UTC
     */
    record Moved(String entry, int seconds, long seen) {}

    private StartWindow() {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        var quicker = new Quicker(people);
        return List.of(
                quicker.told("window.start", Starts.class, StartWindow::starts, (tx, s) -> windowId(tx, s.entry())),
                quicker.told("window.move", Moved.class, StartWindow::moved, (tx, m) -> windowId(tx, m.entry())));
    }

    /** Whether somebody tapped that it starts, and it is open. */
    public static boolean isStarted(Tx tx, WindowAdded window, long nowMs) {
        return window.opensAtMs() <= nowMs
                && nowMs < window.closesAtMs()
                && BreakRecord.lastAct(tx, window.id()).isPresent();
    }

    private static Decision starts(Tx tx, ActContext context, Starts starts) {
        EntryAdded entry = EntryStore.find(tx, starts.entry()).orElse(null);
        if (entry == null) {
            return Decision.unknown("There is no such entry; look again");
        }
        EventAdded event = EventStore.find(tx, entry.eventId()).orElseThrow();
        return notNow(tx, context, event, entry).orElseGet(() -> startsNow(tx, context, event, entry));
    }

    private static Decision startsNow(Tx tx, ActContext context, EventAdded event, EntryAdded entry) {
        long nowMs = context.now().toEpochMilli();
        WindowAdded window = WindowStore.of(tx, event.id(), entry.id()).orElse(null);
        if (window != null && isStarted(tx, window, nowMs)) {
            return new Decision.Outdated("The window is open since " + opened(window, context)
                    + ": put it right by seconds, or write in Prepare that they moved it.");
        }
        if (window != null) {
            WindowAdded now = moved(window, nowMs - window.opensAtMs());
            return decided(context, "window.changed", now, "window starts now");
        }
        return event.windowMinutes() == 0
                ? Decision.refused("entry", "The event has no length of a window: write the window in Prepare")
                : decided(
                        context,
                        "window.added",
                        new WindowAdded(
                                context.ownId(),
                                event.id(),
                                entry.id(),
                                nowMs,
                                nowMs + event.windowMinutes() * MINUTE_MS),
                        "window starts now");
    }

    private static Decision moved(Tx tx, ActContext context, Moved moved) {
        if (moved.seconds() == 0 || Math.abs(moved.seconds()) > MOST_SECONDS) {
            return Decision.refused(
                    "entry",
                    "A tap is put right by 1 to " + MOST_SECONDS + " s; a window that was moved is written in Prepare");
        }
        EntryAdded entry = EntryStore.find(tx, moved.entry()).orElse(null);
        WindowAdded window = entry == null
                ? null
                : WindowStore.of(tx, entry.eventId(), entry.id()).orElse(null);
        if (entry == null || window == null) {
            return Decision.unknown("There is no window of such an entry; look again");
        }
        EventAdded event = EventStore.find(tx, entry.eventId()).orElseThrow();
        return notNow(tx, context, event, entry).orElseGet(() -> putRight(context, window, moved));
    }

    private static Decision putRight(ActContext context, WindowAdded window, Moved moved) {
        int seconds = moved.seconds();
        return window.opensAtMs() != moved.seen()
                ? new Decision.Outdated("The window was moved meanwhile: it opens at " + opened(window, context)
                        + ". Look again, then decide.")
                : decided(
                        context,
                        "window.changed",
                        moved(window, seconds * 1000L),
                        Math.abs(seconds) + (seconds < 0 ? " s earlier" : " s later"));
    }

    /** When hosting the windows are those of the day; while everything stands still none runs; who flies has used theirs. */
    private static Optional<Decision> notNow(Tx tx, ActContext context, EventAdded event, EntryAdded entry) {
        if (event.dayKind() != DayKind.VISITING) {
            return Optional.of(Decision.refused(
                    "entry", "A window starts at an official's word elsewhere only; here it is written in Prepare"));
        }
        return StopHall.refused(tx, event.id())
                .or(() -> AttemptStore.ofEvent(tx, event.id()).stream()
                        .filter(a -> a.entryId().equals(entry.id()) && a.state() == State.RELEASED)
                        .findFirst()
                        .map(a -> PhaseGate.wrongNow(
                                tx, context, a, "A window is started or put right before the release")));
    }

    private static String opened(WindowAdded window, ActContext context) {
        return SECOND.format(Instant.ofEpochMilli(window.opensAtMs()).atZone(context.zone()));
    }

    private static String windowId(Tx tx, String entry) {
        return EntryStore.find(tx, entry)
                .flatMap(known -> WindowStore.of(tx, known.eventId(), known.id()))
                .map(WindowAdded::id)
                .orElse("");
    }

    private static WindowAdded moved(WindowAdded window, long byMs) {
        return new WindowAdded(
                window.id(), window.eventId(), window.entryId(), window.opensAtMs() + byMs, window.closesAtMs() + byMs);
    }

    /** Who did it is kept with the window, for whoever comes second. */
    private static Decision decided(ActContext context, String kind, WindowAdded window, String said) {
        return new Decision.Decided(
                List.of(Fact.of(kind, window), PhaseGate.acted(context, window.id(), said)), Map.of(), TOPICS);
    }
}
