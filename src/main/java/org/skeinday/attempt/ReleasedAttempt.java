package org.skeinday.attempt;

/** In the air. */
public record ReleasedAttempt(String id) implements Attempt.AfterRelease {
    public AttemptMoved land(long atMs) {
        return new AttemptMoved(id, State.LANDED.word(), atMs);
    }

    /** The release was a mistake. @param before where the attempt stood, a state before the release */
    public AttemptTakenBack neverLeft(State before, long atMs) {
        if (!before.isBeforeRelease()) {
            throw new IllegalArgumentException(
                    "Before a release an attempt must be called, winding or holding, but was " + before.word());
        }
        return new AttemptTakenBack(id, before.word(), atMs);
    }
}
