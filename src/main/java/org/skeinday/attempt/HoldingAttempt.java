package org.skeinday.attempt;

/** Wound, and held until the release. */
public record HoldingAttempt(String id) implements Attempt.BeforeRelease {
    /** It was not the last turn: more go on. */
    public AttemptTakenBack windOn(long atMs) {
        return new AttemptTakenBack(id, State.WINDING.word(), atMs);
    }
}
