package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT_HALL_WINDOW;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.HallStopped;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;

/**
 * The windows of a day while its hall may stand still: all pages, plans and verdicts take them as they would be if it went
 * on at the moment that they are asked about. What was set during the stop was set by somebody who knew of it, and waits
 * for nothing.
 */
public final class HallWindows {
    /** Own default: what opens later than that after a stop is of another day, and does not wait for the hall of this one. */
    private static final long OTHER_DAY_MS = 12 * 3_600_000L;

    private final @Nullable HallStopped stop;
    /** As they were when it was stopped. */
    private final Set<WindowAdded> before;

    private HallWindows(@Nullable HallStopped stop, Set<WindowAdded> before) {
        this.stop = stop;
        this.before = before;
    }

    public static HallWindows of(Tx tx, String event) {
        return HallStops.now(tx, event)
                .map(stop -> new HallWindows(stop, before(tx, stop)))
                .orElseGet(() -> new HallWindows(null, Set.of()));
    }

    private static Set<WindowAdded> before(Tx tx, HallStopped stop) {
        return new HashSet<>(tx.sql()
                .select(
                        ATTEMPT_HALL_WINDOW.WINDOW_ID.as("id"),
                        ATTEMPT_HALL_WINDOW.EVENT_ID,
                        ATTEMPT_HALL_WINDOW.ENTRY_ID,
                        ATTEMPT_HALL_WINDOW.OPENS_AT_MS,
                        ATTEMPT_HALL_WINDOW.CLOSES_AT_MS)
                .from(ATTEMPT_HALL_WINDOW)
                .where(ATTEMPT_HALL_WINDOW.STOP_ID.eq(stop.id()))
                .fetchInto(WindowAdded.class));
    }

    /** Keeps them as they are when the hall is stopped. */
    static void keep(Tx tx, HallStopped stop) {
        for (WindowAdded window : WindowStore.ofEvent(tx, stop.eventId())) {
            tx.sql()
                    .insertInto(ATTEMPT_HALL_WINDOW)
                    .set(ATTEMPT_HALL_WINDOW.STOP_ID, stop.id())
                    .set(ATTEMPT_HALL_WINDOW.WINDOW_ID, window.id())
                    .set(ATTEMPT_HALL_WINDOW.EVENT_ID, window.eventId())
                    .set(ATTEMPT_HALL_WINDOW.ENTRY_ID, window.entryId())
                    .set(ATTEMPT_HALL_WINDOW.OPENS_AT_MS, window.opensAtMs())
                    .set(ATTEMPT_HALL_WINDOW.CLOSES_AT_MS, window.closesAtMs())
                    .execute();
        }
    }

    public boolean standStill() {
        return stop != null;
    }

    /** In which an entry flies, if the hall went on then; empty without one. @param atMs ms since 1970 UTC */
    public static Optional<WindowAdded> of(Tx tx, String event, String entry, long atMs) {
        return WindowStore.of(tx, event, entry).map(window -> of(tx, event).goingOn(window, atMs));
    }

    /**
     * The window if the hall went on then. One that was open keeps what it had left; one that was to come, its length and
     * its distance to the others; one that had closed stays closed, and one of another day stays where it is.
     *
     * @param atMs ms since 1970 UTC; before the stop as at the stop
     */
    public WindowAdded goingOn(WindowAdded window, long atMs) {
        if (stop == null
                || window.closesAtMs() <= stop.atMs()
                || window.opensAtMs() > stop.atMs() + OTHER_DAY_MS
                || !before.contains(window)) {
            return window;
        }
        long byMs = wholeSeconds(Math.max(0, atMs - stop.atMs()));
        long opens = window.opensAtMs() > stop.atMs() ? window.opensAtMs() + byMs : window.opensAtMs();
        return new WindowAdded(window.id(), window.eventId(), window.entryId(), opens, window.closesAtMs() + byMs);
    }

    /** Windows stand in whole seconds on every page: up to the next, which is the team's. */
    private static long wholeSeconds(long ms) {
        return (ms + 999) / 1000 * 1000;
    }
}
