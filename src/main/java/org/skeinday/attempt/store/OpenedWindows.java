package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT_LAST_ACT;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;

/**
 * Windows that opened at an official's word, which somebody tapped: elsewhere that is a phase of an attempt. Where windows are
 * those of the day nothing is read.
 */
final class OpenedWindows {
    private final List<WindowAdded> windows;
    private final Set<String> tapped;

    private OpenedWindows(List<WindowAdded> windows, Set<String> tapped) {
        this.windows = windows;
        this.tapped = tapped;
    }

    static OpenedWindows of(Tx tx, Collection<EventAdded> events) {
        List<WindowAdded> windows = events.stream()
                .filter(event -> event.dayKind() == DayKind.VISITING)
                .flatMap(event -> WindowStore.ofEvent(tx, event.id()).stream())
                .toList();
        return new OpenedWindows(windows, windows.isEmpty() ? Set.of() : tapped(tx, windows));
    }

    private static Set<String> tapped(Tx tx, List<WindowAdded> windows) {
        return new HashSet<>(tx.sql()
                .select(ATTEMPT_LAST_ACT.ATTEMPT_ID)
                .from(ATTEMPT_LAST_ACT)
                .where(ATTEMPT_LAST_ACT.ATTEMPT_ID.in(
                        windows.stream().map(WindowAdded::id).toList()))
                .fetch(ATTEMPT_LAST_ACT.ATTEMPT_ID));
    }

    /**
     * When the window of an attempt opened, ms since 1970 UTC: before the release as it was tapped last, unless it had closed
     * before the call; from the release on as it stood then.
     */
    Optional<Long> of(AttemptNow attempt) {
        return attempt.releasedAtMs() == null ? tapped(attempt) : flownIn(attempt, attempt.releasedAtMs());
    }

    private Optional<Long> tapped(AttemptNow attempt) {
        long calledMs = Objects.requireNonNullElse(attempt.calledAtMs(), 0L);
        return its(attempt)
                .filter(window -> tapped.contains(window.id()) && window.closesAtMs() > calledMs)
                .map(WindowAdded::opensAtMs);
    }

    private Optional<Long> flownIn(AttemptNow attempt, long releasedMs) {
        return FlightWindows.of(attempt, Optional::empty)
                .filter(window -> its(attempt).isPresent() && window.opensAtMs() <= releasedMs)
                .map(WindowAdded::opensAtMs);
    }

    /** Its own, or the one for all; empty where windows are those of the day. */
    private Optional<WindowAdded> its(AttemptNow attempt) {
        List<WindowAdded> ofEvent = windows.stream()
                .filter(window -> window.eventId().equals(attempt.eventId()))
                .toList();
        return WindowAdded.of(ofEvent, attempt.entryId());
    }
}
