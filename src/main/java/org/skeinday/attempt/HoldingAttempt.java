package org.skeinday.attempt;

/** Wound, and held until the release. */
public record HoldingAttempt(String id) implements Attempt.BeforeRelease {
    @Override
    public State state() {
        return State.HOLDING;
    }
}
