package org.skeinday.attempt.store;

import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.contest.WindowAdded;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Tx;

/** The window that an attempt is judged by. */
public final class FlightWindows {
    private FlightWindows() {}

    /** As it stood at the release; before it, and for what a file brought, as it stands now. Empty without a window. */
    public static Optional<WindowAdded> of(Tx tx, AttemptNow attempt) {
        return atRelease(attempt).or(() -> WindowStore.of(tx, attempt.eventId(), attempt.entryId()));
    }

    /** As it stood at the release; empty before it, and for what a file brought. */
    public static Optional<WindowAdded> atRelease(AttemptNow attempt) {
        AttemptNow.Window flewIn = attempt.flewIn();
        return flewIn == null || attempt.releasedAtMs() == null
                ? Optional.empty()
                : Optional.of(new WindowAdded(
                        attempt.id(), attempt.eventId(), attempt.entryId(), flewIn.opensMs(), flewIn.closesMs()));
    }
}
