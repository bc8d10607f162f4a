package org.skeinday.attempt;

import org.skeinday.timing.OfficialTime;

/** Down again; its time is not official yet. */
public record LandedAttempt(String id) implements Attempt.AfterRelease {
    /** The landing was a mistake. */
    public AttemptTakenBack fliesOn(long atMs) {
        return new AttemptTakenBack(id, State.RELEASED.word(), atMs);
    }

    /** Takes the official time. @param slots watches that it was made of, as 1,2 */
    public AttemptClosed close(long atMs, OfficialTime official, String person, String slots) {
        return new AttemptClosed(id, atMs, official.millis(), official.how(), person, slots);
    }
}
