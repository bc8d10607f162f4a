package org.skeinday.attempt;

/** In the air. */
public record ReleasedAttempt(String id) implements Attempt.AfterRelease {
    @Override
    public State state() {
        return State.RELEASED;
    }

    public AttemptMoved land(long atMs) {
        return new AttemptMoved(id, State.LANDED.word(), atMs);
    }
}
