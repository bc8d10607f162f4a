package org.skeinday.attempt;

/**
 * An attempt in one of its states. Each state is a type that offers just the moves that lead out of it; each move
 * answers the fact that it makes.
 */
public sealed interface Attempt permits PlannedAttempt, Attempt.BeforeRelease, Attempt.AfterRelease, EndedAttempt {

    /** Called and not yet released: it may be released, or scrubbed (the motor is run back). */
    sealed interface BeforeRelease extends Attempt permits CalledAttempt, WindingAttempt, HoldingAttempt {
        String id();

        /** Winding and holding may be passed over: officials do not see every entry's bench. */
        default AttemptMoved release(long atMs) {
            return new AttemptMoved(id(), State.RELEASED.word(), atMs);
        }

        /** Another motor: the first broke, fell, or is not trusted. Its wind begins anew. */
        default MotorTaken take(String motor, long atMs) {
            return new MotorTaken(id(), motor, atMs);
        }

        default AttemptGivenUp scrub(long atMs, String reason) {
            return new AttemptGivenUp(id(), State.SCRUBBED.word(), atMs, reason, null, null);
        }
    }

    /** Released and not yet closed: it can only be declared void any more. */
    sealed interface AfterRelease extends Attempt permits ReleasedAttempt, LandedAttempt {
        String id();

        default AttemptGivenUp declareVoid(long atMs, String reason) {
            return new AttemptGivenUp(id(), State.VOID.word(), atMs, reason, null, null);
        }
    }

    /** The attempt in the type of its state. */
    static Attempt of(AttemptNow now) {
        return switch (now.state()) {
            case PLANNED ->
                new PlannedAttempt(
                        now.id(), now.eventId(), now.entryId(), now.number().running());
            case CALLED -> new CalledAttempt(now.id());
            case WINDING -> new WindingAttempt(now.id());
            case HOLDING -> new HoldingAttempt(now.id());
            case RELEASED -> new ReleasedAttempt(now.id());
            case LANDED -> new LandedAttempt(now.id());
            case CLOSED, SCRUBBED, VOID -> new EndedAttempt(now.id());
        };
    }
}
