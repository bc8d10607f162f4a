package org.skeinday.attempt;

import java.util.Arrays;
import java.util.Optional;
import org.skeinday.units.EnumWords;

/** What a timekeeper's keys say beside the landing. */
public enum WatchMark {
    /** By hand signal and by key: this watch is ready for the release. */
    READY,
    RELEASED,
    /** The press for the release was a mistake. */
    NOT_RELEASED,
    /** The model touched something and flew on. */
    TOUCHED,
    /** A part of the building holds the model. */
    HELD,
    /** It flies on. */
    FREE,
    /** The contact marked before was a mistake. */
    TAKEN_BACK,
    /** The press for the landing was a mistake: the watch goes on as if it had not been stopped. */
    STILL_FLYING,
    /** A second press so soon after the first that it was no decision. */
    SWALLOWED,
    /** Monotonic and wall clock of the device came apart while the watch ran: it slept, or the clock was set. */
    GAP,
    /** The page was loaded anew while the watch ran: the wall clock joins both parts. */
    RELOADED,
    /** A press for the release when the model had long been in the air: of a watch that was taken over, or loaded anew. */
    LATE_RELEASE,
    /** What it says lasted otherwise by the server's own moments of its release and landing: by so many ms longer. */
    APART;

    /** As records and scripts write it, for example {@code not-released}. */
    public String word() {
        return EnumWords.of(this);
    }

    public static Optional<WatchMark> of(String word) {
        return Arrays.stream(values()).filter(m -> m.word().equals(word)).findFirst();
    }
}
