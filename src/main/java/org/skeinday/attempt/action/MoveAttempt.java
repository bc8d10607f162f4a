package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptMoved;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.CalledAttempt;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.ReleasedAttempt;
import org.skeinday.attempt.Seen;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WindingAttempt;
import org.skeinday.attempt.store.FlightWindows;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPhase;

/** Moves an attempt on: winding, holding, released, landed. */
public final class MoveAttempt {
    private MoveAttempt() {}

    /**
     * Says that an attempt reached a state: winding, holding, released or landed.
     *
     * @param seen what the form showed, as {@link Seen} writes it
     */
    public record Move(String attempt, String to, @Nullable String seen) {}

    private static final Map<String, AttemptAct> ACTS = Map.of(
            State.WINDING.word(), AttemptAct.FIRST_TURN,
            State.HOLDING.word(), AttemptAct.LAST_TURN,
            State.RELEASED.word(), AttemptAct.RELEASED,
            State.LANDED.word(), AttemptAct.LANDED);

    static Decision decide(Tx tx, ActContext context, Move move) {
        AttemptEvidence known = LiveAttempts.evidence(tx, move.attempt()).orElse(null);
        if (known == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        AttemptAct act = ACTS.get(move.to());
        if (act == null) {
            return Decision.refused("An attempt becomes " + String.join(", ", new TreeSet<>(ACTS.keySet()))
                    + ", but never '" + move.to() + "'");
        }
        return AttemptActions.outdated(move.seen(), known)
                .or(() -> PhaseGate.refused(tx, context, LiveAttempt.of(known), act))
                .or(() -> act == AttemptAct.FIRST_TURN ? notWound(tx, known.now()) : Optional.empty())
                .orElseGet(() -> moved(tx, context, known, act));
    }

    /** Why it must not be wound now. */
    private static Optional<Decision> notWound(Tx tx, AttemptNow attempt) {
        return WhyNotFly.whyNotFlown(tx, attempt.motorId())
                .map(Decision::refused)
                .or(() -> PlaceHeld.refused(tx, attempt)
                        .or(() -> WindingGate.refused(tx, attempt))
                        .map(waits -> Decision.refused(WindingGate.FIELD, waits)));
    }

    private static Decision moved(Tx tx, ActContext context, AttemptEvidence known, AttemptAct act) {
        List<Fact> facts = new ArrayList<>();
        long atMs = context.now().toEpochMilli();
        moved(Attempt.of(known.now()), act, atMs).ifPresent(fact -> {
            facts.add(Fact.of("attempt.moved", fact));
            if (act == AttemptAct.RELEASED) {
                facts.add(FlightWindows.kept(tx, known.now(), atMs));
            }
            MotorGoes.with(tx, context, known.now(), State.of(fact.state()), atMs)
                    .ifPresent(facts::add);
        });
        facts.addAll(HandsThen.kept(tx, known.now()));
        if (act == AttemptAct.FIRST_TURN) {
            facts.addAll(ChooseStation.stays(tx, known.now()));
        }
        if (act == AttemptAct.LAST_TURN) {
            known.presentWind().flatMap(wind -> stopped(context, wind, atMs)).ifPresent(facts::add);
        }
        facts.add(PhaseGate.acted(context, known.now().id(), act));
        return new Decision.Decided(facts, Map.of(), PhaseGate.TOPICS);
    }

    /** Empty where more turns had gone on: it holds already as far as the record's states go. */
    private static Optional<AttemptMoved> moved(Attempt attempt, AttemptAct act, long atMs) {
        return Optional.ofNullable(
                switch (act) {
                    case FIRST_TURN -> attempt instanceof CalledAttempt called ? called.startWinding(atMs) : null;
                    case LAST_TURN -> attempt instanceof WindingAttempt winding ? winding.hold(atMs) : null;
                    case RELEASED -> attempt instanceof Attempt.BeforeRelease before ? before.release(atMs) : null;
                    default -> attempt instanceof ReleasedAttempt released ? released.land(atMs) : null;
                });
    }

    /** The reader's keys go on with it: the last turn is on, whoever said so first. */
    private static Optional<Fact> stopped(ActContext context, Wind wind, long atMs) {
        if (wind.phase().compareTo(Wind.Phase.STOPPED) >= 0) {
            return Optional.empty();
        }
        long elapsedMs = Math.max(0, atMs - wind.begun().atMs());
        return Optional.of(Fact.of(
                "wind.phase", new WindPhase(context.nextId(), wind.begun().id(), WindPhase.STOPPED, elapsedMs, atMs)));
    }
}
