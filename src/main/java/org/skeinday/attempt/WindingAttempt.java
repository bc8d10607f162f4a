package org.skeinday.attempt;

/** The motor is being wound. */
public record WindingAttempt(String id) implements Attempt.BeforeRelease {
    /** The last turn is on; from here the torque bleeds. */
    public AttemptMoved hold(long atMs) {
        return new AttemptMoved(id, State.HOLDING.word(), atMs);
    }
}
