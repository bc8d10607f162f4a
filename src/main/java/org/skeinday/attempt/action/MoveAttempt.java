package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptMoved;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.CalledAttempt;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.Seen;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WindingAttempt;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Moves an attempt on: winding, holding, released, landed. */
public final class MoveAttempt {
    private MoveAttempt() {}

    /**
     * Says that an attempt reached a state: winding, holding, released or landed.
     *
     * @param seen what the form showed, as {@link Seen} writes it
     */
    public record Move(String attempt, String to, @Nullable String seen) {}

    static Decision decide(Tx tx, ActContext context, Move move) {
        AttemptNow now = AttemptStore.find(tx, move.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        Optional<Decision> outdated = AttemptDeeds.outdated(move.seen(), now);
        if (outdated.isPresent()) {
            return outdated.get();
        }
        if (move.to().equals(State.WINDING.word())) {
            Optional<String> notFit = WhyNotFly.whyNotFlown(tx, now.motorId());
            if (notFit.isPresent()) {
                return Decision.refused(notFit.get());
            }
            Optional<String> waits = now.state() == State.CALLED ? WindingGate.refused(tx, now) : Optional.empty();
            if (waits.isPresent()) {
                return Decision.refused(WindingGate.FIELD, waits.get());
            }
        }
        return moved(Attempt.of(now), move.to(), context.now().toEpochMilli())
                .<Decision>map(fact -> withMotor(tx, context, now, fact))
                .orElseGet(() -> Decision.refused(
                        "An attempt that is " + now.state().word() + " cannot become '" + move.to() + "'"));
    }

    private static Decision withMotor(Tx tx, ActContext context, AttemptNow attempt, AttemptMoved fact) {
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("attempt.moved", fact)));
        MotorGoes.with(tx, context, attempt, State.of(fact.state()), fact.atMs())
                .ifPresent(facts::add);
        return new Decision.Decided(facts, Map.of(), AttemptDeeds.MOVED);
    }

    /** Empty when no move leads from this state to that word. */
    private static Optional<AttemptMoved> moved(Attempt attempt, String to, long atMs) {
        return Optional.ofNullable(
                switch (to) {
                    case "winding" -> attempt instanceof CalledAttempt called ? called.startWinding(atMs) : null;
                    case "holding" -> attempt instanceof WindingAttempt winding ? winding.hold(atMs) : null;
                    case "released" -> attempt instanceof Attempt.BeforeRelease before ? before.release(atMs) : null;
                    case "landed" -> attempt instanceof ReleasedAttempt released ? released.land(atMs) : null;
                    default -> null;
                });
    }
}
