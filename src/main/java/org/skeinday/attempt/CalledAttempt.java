package org.skeinday.attempt;

/** Called: the entry is on its way to the floor. */
public record CalledAttempt(String id) implements Attempt.BeforeRelease {
    public AttemptMoved startWinding(long atMs) {
        return new AttemptMoved(id, State.WINDING.word(), atMs);
    }
}
