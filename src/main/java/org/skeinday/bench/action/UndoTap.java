package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.HoldingAttempt;
import org.skeinday.attempt.WindingAttempt;
import org.skeinday.attempt.action.BrokenMotor;
import org.skeinday.attempt.action.PhaseGate;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.Removed;
import org.skeinday.platform.record.TapTime;
import org.skeinday.winding.FloorMarkReached;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.WindUndone;
import org.skeinday.winding.store.WindStore;

/** A tap of the reader or a spotter was a slip of the hand: everything stands as before it. */
final class UndoTap {
    /**
     * Undone within ten seconds.
     *
     * @param tap id of what it made; the wind's own for its first crank turn
     * @param elapsedMs since the first crank turn, by the clock that the tap has; null for one that has the server's
     */
    record Undo(
            String wind,
            String tap,
            @Nullable Long elapsedMs,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    private static final Set<String> FACES_PEOPLE = Set.of(WindPhase.AGAIN, WindPhase.OFF_METER);

    private UndoTap() {}

    static Decision decide(Tx tx, ActContext context, Undo undo) {
        if (WindStore.isUndone(tx, undo.tap())) {
            return Decision.refused("This was undone already");
        }
        Wind wind = WindStore.find(tx, undo.wind()).orElse(null);
        Optional<Long> tapped = wind == null ? Optional.empty() : tappedMs(wind, undo.tap());
        if (wind == null || tapped.isEmpty()) {
            return Decision.unknown("There is no such tap to undo; look again");
        }
        long atMs = TapTime.of(
                context, undo.serverMs(), undo.boundMs(), wind.begun().atMs());
        long elapsedMs = undo.elapsedMs() == null ? atMs - wind.begun().atMs() : undo.elapsedMs();
        return WindUndone.tooLate(tapped.get(), elapsedMs)
                .or(() -> somethingBuildsOnIt(wind, undo.tap()))
                .map(Decision::refused)
                .orElseGet(() -> undone(tx, context, wind, undo.tap(), atMs));
    }

    /** Since the first crank turn; empty where this wind has no such tap. */
    private static Optional<Long> tappedMs(Wind wind, String tap) {
        if (tap.equals(wind.begun().id())) {
            return Optional.of(0L);
        }
        return Stream.of(
                        wind.phases().stream().filter(p -> p.id().equals(tap)).map(WindPhase::elapsedMs),
                        wind.marks().stream().filter(m -> m.id().equals(tap)).map(WindMark::elapsedMs),
                        wind.floor().stream().filter(f -> f.id().equals(tap)).map(FloorMarkReached::elapsedMs))
                .flatMap(taps -> taps)
                .findFirst();
    }

    /** A mark stands alone; a step stands under the next one, and the first turn under everything. */
    private static Optional<String> somethingBuildsOnIt(Wind wind, String tap) {
        if (tap.equals(wind.begun().id())) {
            boolean begun = !wind.phases().isEmpty() || !wind.marks().isEmpty();
            return begun
                    ? Optional.of("This wind has gone on since: say Last turn, then Run it back")
                    : Optional.empty();
        }
        List<WindPhase> phases = wind.phases();
        int at = phases.stream().map(WindPhase::id).toList().indexOf(tap);
        if (at < 0) {
            return Optional.empty();
        }
        if (at < phases.size() - 1) {
            return Optional.of("Something else was said since: undo that first");
        }
        boolean ofBreak = FACES_PEOPLE.contains(phases.get(at).phase())
                && Wind.of(wind.begun(), phases.subList(0, at), List.of(), null)
                        .broke()
                        .isPresent();
        return ofBreak ? Optional.of("After a break this is not undone: say what is so now") : Optional.empty();
    }

    private static Decision undone(Tx tx, ActContext context, Wind wind, String tap, long atMs) {
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of("wind.undone", new WindUndone(wind.begun().id(), tap, atMs, context.device())));
        @Nullable
        AttemptNow attempt = Optional.ofNullable(wind.begun().attemptId())
                .flatMap(id -> AttemptStore.find(tx, id))
                .filter(now -> wind.begun().motorId().equals(now.motorId()))
                .orElse(null);
        Set<String> topics = WindActions.TOPICS;
        if (tap.equals(wind.begun().id())) {
            facts.addAll(notBegun(attempt, atMs));
        }
        String phase = wind.phases().stream()
                .filter(p -> p.id().equals(tap))
                .map(WindPhase::phase)
                .findFirst()
                .orElse("");
        facts.addAll(TorquesFollow.marks(tx, context, wind, wind.without(tap)));
        if (phase.equals(WindPhase.BROKE)) {
            BrokenMotor.notBroken(tx, wind).ifPresent(facts::add);
            if (attempt != null) {
                facts.add(PhaseGate.acted(context, attempt.id(), AttemptAct.NOT_BROKEN));
            }
            topics = PhaseGate.FIRST;
        }
        if (phase.equals(WindPhase.STOPPED)) {
            facts.addAll(notStopped(tx, wind, attempt, atMs));
        }
        return new Decision.Decided(facts, Map.of(), topics);
    }

    /** Its attempt is called as before, with the same motor. */
    private static List<Fact> notBegun(@Nullable AttemptNow attempt, long atMs) {
        return attempt != null && Attempt.of(attempt) instanceof WindingAttempt winding
                ? List.of(Fact.of("attempt.motor", winding.take(String.valueOf(attempt.motorId()), atMs)))
                : List.of();
    }

    /** It was the first "Last turn" of this wind: its motor is not wound yet, and its attempt does not hold. */
    private static List<Fact> notStopped(Tx tx, Wind wind, @Nullable AttemptNow attempt, long atMs) {
        boolean first = wind.phases().stream()
                        .filter(p ->
                                p.phase().equals(WindPhase.STOPPED) || p.phase().equals(WindPhase.AGAIN))
                        .count()
                == 1;
        List<Fact> facts = new ArrayList<>();
        if (!first) {
            return facts;
        }
        if (attempt != null && Attempt.of(attempt) instanceof HoldingAttempt holding) {
            facts.add(Fact.of("attempt.taken-back", holding.windOn(atMs)));
        }
        MotorLifeStore.find(tx, wind.begun().motorId())
                .map(MotorLife::step)
                .filter(step -> step.deed().equals(MotorDeed.WIND.word()))
                .filter(step -> step.atMs() >= wind.begun().atMs())
                .ifPresent(step -> facts.add(Fact.of("motor.step.undone", new Removed(step.id()))));
        return facts;
    }
}
