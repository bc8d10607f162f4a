package org.skeinday.attempt.store;

import java.util.Optional;
import java.util.function.Supplier;
import org.skeinday.attempt.AttemptFlewIn;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Fact;

/** The window that an attempt is judged by. */
public final class FlightWindows {
    private FlightWindows() {}

    /** As it stood at the release; before it, and for what a file brought, as it stands now. Empty without a window. */
    public static Optional<WindowAdded> of(Tx tx, AttemptNow attempt) {
        return of(attempt, () -> WindowStore.of(tx, attempt.eventId(), attempt.entryId()));
    }

    /** The same. @param now its window as it stands now */
    public static Optional<WindowAdded> of(AttemptNow attempt, Supplier<Optional<WindowAdded>> now) {
        AttemptNow.Window flewIn = attempt.flewIn();
        if (flewIn == null || attempt.releasedAtMs() == null) {
            return now.get();
        }
        return flewIn.isNone()
                ? Optional.empty()
                : Optional.of(new WindowAdded(
                        attempt.id(), attempt.eventId(), attempt.entryId(), flewIn.opensMs(), flewIn.closesMs()));
    }

    /** That a release is judged once, by the windows of that moment; they wait while the hall stands still. */
    public static Fact kept(Tx tx, AttemptNow attempt, long releasedMs) {
        WindowAdded window = HallWindows.of(tx, attempt.eventId(), attempt.entryId(), releasedMs)
                .orElse(null);
        return Fact.of(
                "attempt.flew-in",
                window == null
                        ? new AttemptFlewIn(attempt.id(), null, null)
                        : new AttemptFlewIn(attempt.id(), window.opensAtMs(), window.closesAtMs()));
    }
}
