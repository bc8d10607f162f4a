package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WindingAttempt;
import org.skeinday.attempt.action.BreakMotor;
import org.skeinday.attempt.action.BrokenMotor;
import org.skeinday.attempt.action.MotorGoes;
import org.skeinday.attempt.action.PhaseGate;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.motor.MotorDeed;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.WindReader;
import org.skeinday.winding.store.WindStore;

/** What the reader taps while a motor is wound. Nothing of it is refused for being late. */
public final class WindActions {
    static final Set<String> TOPICS = Set.of("winds", "attempts", "motors");
    private static final Set<String> NEEDLE = Set.of("winds");

    /** After a break people come first, on every page. */
    private static final Set<String> FIRST = Set.of(WindPhase.BROKE, WindPhase.AGAIN, WindPhase.OFF_METER);

    private static final Map<String, AttemptAct> MOVES = Map.of(
            WindPhase.STOPPED, AttemptAct.LAST_TURN,
            WindPhase.AGAIN, AttemptAct.MORE_TURNS,
            WindPhase.BROKE, AttemptAct.BROKE);

    private WindActions() {}

    /** The needle crossed a mark, 1 up or -1 down. */
    public record Mark(
            String wind,
            int step,
            long elapsedMs,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    /** What the winder did: a word of {@link WindPhase#PHASES}. */
    public record Phase(
            String wind,
            String phase,
            long elapsedMs,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    /** The reader's device is gone or out of power: this one reads on. */
    public record TakeOver(String wind) {}

    public static List<ActKind<?>> kinds() {
        List<ActKind<?>> kinds = new ArrayList<>(List.of(
                new ActKind<>("wind.begin", BeginWind.Begin.class, BeginWind::begin),
                new ActKind<>("wind.alone", WindAlone.Begin.class, WindAlone::begin),
                new ActKind<>("wind.mark", Mark.class, WindActions::mark),
                new ActKind<>("wind.phase", Phase.class, WindActions::phase),
                new ActKind<>("wind.count", CountWind.Turns.class, CountWind::decide),
                JudgeWind.kind(),
                new ActKind<>("wind.take-over", TakeOver.class, WindActions::takeOver)));
        kinds.addAll(ReadingWord.kinds());
        return List.copyOf(kinds);
    }

    static Decision takeOver(Tx tx, ActContext context, TakeOver over) {
        return WindStore.find(tx, over.wind()).isEmpty()
                ? Decision.unknown("There is no such wind; look again")
                : Decision.decided(TOPICS, Fact.of("wind.reader", new WindReader(over.wind(), context.device())));
    }

    static Decision mark(Tx tx, ActContext context, Mark mark) {
        Wind wind = WindStore.find(tx, mark.wind()).orElse(null);
        if (wind == null) {
            return Decision.unknown("There is no such wind: its first crank turn has not come in");
        }
        long atMs = TapTime.of(
                context, mark.serverMs(), mark.boundMs(), wind.begun().atMs());
        try {
            var fact = WindMark.crossed(context.ownId(), mark.wind(), mark.step(), mark.elapsedMs(), atMs);
            return read(tx, context, wind, fact);
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage()));
        }
    }

    /** A mark that comes in after the turns were counted changes what the wind came to. */
    static Decision read(Tx tx, ActContext context, Wind wind, WindMark mark) {
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("wind.mark", mark)));
        facts.addAll(TorquesFollow.marks(tx, context, wind, wind.and(mark)));
        return new Decision.Decided(facts, Map.of(), wind.counted() == null ? NEEDLE : TOPICS);
    }

    static Decision phase(Tx tx, ActContext context, Phase phase) {
        Wind wind = WindStore.find(tx, phase.wind()).orElse(null);
        if (wind == null) {
            return Decision.unknown("There is no such wind: its first crank turn has not come in");
        }
        long atMs = TapTime.of(
                context, phase.serverMs(), phase.boundMs(), wind.begun().atMs());
        List<Fact> facts = new ArrayList<>();
        try {
            var fact = new WindPhase(context.ownId(), phase.wind(), phase.phase(), phase.elapsedMs(), atMs);
            facts.add(Fact.of("wind.phase", fact));
            if (isOver(tx, wind)) { // kept as evidence; it moves nothing any more
                return new Decision.Decided(facts, Map.of(), TOPICS);
            }
            acted(tx, context, wind, phase.phase()).ifPresent(facts::add);
            facts.addAll(TorquesFollow.marks(tx, context, wind, wind.with(fact)));
            BrokenMotor.goes(tx, context, wind, fact).ifPresent(facts::add);
            if (phase.phase().equals(WindPhase.OFF_METER) && wind.broke().isPresent()) {
                BreakMotor.safe(tx, context, wind).ifPresent(facts::add);
            }
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage()));
        }
        if (phase.phase().equals(WindPhase.STOPPED) && wind.broke().isEmpty()) {
            holding(tx, context, wind, atMs, facts);
        }
        return new Decision.Decided(facts, Map.of(), FIRST.contains(phase.phase()) ? PhaseGate.FIRST : TOPICS);
    }

    /** Its motor was run back since, or wound once more for the attempt. */
    static boolean isOver(Tx tx, Wind wind) {
        return Optional.ofNullable(wind.begun().attemptId())
                .flatMap(attempt -> LiveAttempts.evidence(tx, attempt))
                .filter(known -> !known.isLastOfItsMotor(wind))
                .isPresent();
    }

    /** What moves its attempt, for whoever comes second; what its phase does not have is kept, and moves nothing. */
    private static Optional<Fact> acted(Tx tx, ActContext context, Wind wind, String phase) {
        AttemptAct act = MOVES.get(phase);
        return act == null
                ? Optional.empty()
                : Optional.ofNullable(wind.begun().attemptId())
                        .flatMap(attempt -> LiveAttempts.find(tx, attempt))
                        .filter(live -> AttemptActs.of(live).contains(act) || isBrokenBefore(live, act))
                        .map(live -> PhaseGate.acted(context, live.id(), act));
    }

    /** The break was a mistake: winding goes on. */
    private static boolean isBrokenBefore(LiveAttempt live, AttemptAct act) {
        return act == AttemptAct.MORE_TURNS && live.phase().name() == AttemptPhase.Name.BROKE;
    }

    /** The motor is wound from the stop on, and its attempt holds. */
    private static void holding(Tx tx, ActContext context, Wind wind, long atMs, List<Fact> facts) {
        if (wind.begun().attemptId() == null) {
            MotorGoes.step(tx, context, wind.begun().motorId(), MotorDeed.WIND, atMs)
                    .ifPresent(facts::add);
        }
        AttemptNow attempt = Optional.ofNullable(wind.begun().attemptId())
                .flatMap(id -> AttemptStore.find(tx, id))
                .orElse(null);
        if (attempt == null || !wind.begun().motorId().equals(attempt.motorId())) {
            return; // the attempt has gone on with another motor
        }
        if (Attempt.of(attempt) instanceof WindingAttempt winding) {
            facts.add(Fact.of("attempt.moved", winding.hold(atMs)));
            MotorGoes.with(tx, context, attempt, State.HOLDING, atMs).ifPresent(facts::add);
        }
    }
}
