package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.CalledAttempt;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WindingAttempt;
import org.skeinday.attempt.action.BreakMotor;
import org.skeinday.attempt.action.BrokenMotor;
import org.skeinday.attempt.action.MotorGoes;
import org.skeinday.attempt.action.PhaseGate;
import org.skeinday.attempt.action.StopHall;
import org.skeinday.attempt.action.WhyNotFly;
import org.skeinday.attempt.action.WindingGate;
import org.skeinday.attempt.store.Aims;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.StopRule;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.units.Torque;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.WindReader;
import org.skeinday.winding.WindingPlan;
import org.skeinday.winding.store.WindStore;

/** What the reader taps while a motor is wound. Nothing of it is refused for being late. */
public final class WindActions {
    static final Set<String> TOPICS = Set.of("winds", "attempts", "motors");
    /** A first crank turn that comes in later than this has happened: to refuse it would lose the wind. */
    private static final long HAPPENED_MS = 10_000;

    private static final Set<String> NEEDLE = Set.of("winds");

    /** After a break people come first, on every page. */
    private static final Set<String> FIRST = Set.of(WindPhase.BROKE, WindPhase.AGAIN, WindPhase.OFF_METER);

    private static final Map<String, AttemptAct> MOVES = Map.of(
            WindPhase.STOPPED, AttemptAct.LAST_TURN,
            WindPhase.AGAIN, AttemptAct.MORE_TURNS,
            WindPhase.BROKE, AttemptAct.BROKE);

    private WindActions() {}

    /**
     * The first crank turn for an attempt; the wind's id is the act's with -0.
     *
     * @param motor that the page showed: a tap that comes late is of the motor that was wound, not of its spare
     */
    public record Begin(
            String attempt,
            @Nullable String motor,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

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
        return List.of(
                new ActKind<>("wind.begin", Begin.class, WindActions::begin),
                new ActKind<>("wind.alone", WindAlone.Begin.class, WindAlone::begin),
                new ActKind<>("wind.mark", Mark.class, WindActions::mark),
                new ActKind<>("wind.phase", Phase.class, WindActions::phase),
                new ActKind<>("wind.count", CountWind.Turns.class, CountWind::decide),
                new ActKind<>("wind.leave-out", CountWind.LeaveOut.class, CountWind::leaveOut),
                new ActKind<>("wind.confirm", CountWind.LeaveOut.class, CountWind::confirm),
                new ActKind<>("wind.take-over", TakeOver.class, WindActions::takeOver));
    }

    /** How the motor of an attempt is to be wound. */
    public static MotorPlan plan(Tx tx, AttemptNow attempt, MotorAdded motor) {
        @Nullable
        ModelAdded model = Optional.ofNullable(attempt.modelId())
                .flatMap(id -> ModelStore.find(tx, id))
                .orElse(null);
        EntryAdded entry = EntryStore.find(tx, attempt.entryId()).orElseThrow();
        return Aims.plan(tx, entry, attempt.id(), motor, model);
    }

    static Decision begin(Tx tx, ActContext context, Begin begin) {
        AttemptNow attempt = AttemptStore.find(tx, begin.attempt()).orElse(null);
        if (attempt == null || attempt.motorId() == null) {
            return Decision.refused("That attempt has no motor: the captain calls it with one");
        }
        boolean spare = begin.motor() != null && !begin.motor().equals(attempt.motorId());
        MotorLife life = MotorLifeStore.find(tx, spare ? String.valueOf(begin.motor()) : attempt.motorId())
                .orElse(null);
        if (life == null) {
            return Decision.unknown("There is no such motor any more; look again");
        }
        String motor = life.motor().id();
        Optional<String> no = EntryStore.find(tx, attempt.entryId())
                .flatMap(entry -> WhyNotFly.wrongMotor(tx, entry, motor))
                .or(life::whyNotFlown);
        if (no.isPresent()) {
            return Decision.refused(no.get());
        }
        if (isBegun(tx, attempt.id(), motor)) {
            return Decision.refused("This wind was begun already, on another device: it is read there");
        }
        long calledMs = attempt.calledAtMs() == null ? 0 : attempt.calledAtMs();
        long atMs = TapTime.of(context, begin.serverMs(), begin.boundMs(), calledMs);
        boolean toCome = context.now().toEpochMilli() - atMs < HAPPENED_MS; // what has happened is kept
        Optional<Decision> waits = toCome ? StopHall.refused(tx, attempt.eventId()) : Optional.empty();
        if (waits.isEmpty() && toCome && attempt.state() == State.CALLED) {
            waits = WindingGate.refused(tx, attempt).map(Decision::refused);
        }
        if (waits.isPresent()) {
            return waits.get();
        }
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of("wind.begun", begun(tx, context, attempt, life.motor(), atMs)));
        if (!spare && Attempt.of(attempt) instanceof CalledAttempt called) {
            facts.add(Fact.of("attempt.moved", called.startWinding(atMs)));
            facts.add(PhaseGate.acted(context, attempt.id(), AttemptAct.FIRST_TURN));
        }
        return new Decision.Decided(facts, Map.of(), TOPICS);
    }

    /** A motor that was run back since may be wound once more. */
    private static boolean isBegun(Tx tx, String attempt, String motor) {
        return LiveAttempts.evidence(tx, attempt).stream()
                .flatMap(known -> known.windsNotRunBack().stream())
                .anyMatch(wind -> wind.begun().motorId().equals(motor));
    }

    private static WindBegun begun(Tx tx, ActContext context, AttemptNow attempt, MotorAdded motor, long atMs) {
        EventAdded event = EventStore.find(tx, attempt.eventId()).orElseThrow();
        @Nullable StationAdded station = StationStore.atWork(tx).orElse(null);
        MotorPlan planned = plan(tx, attempt, motor);
        @Nullable WindingPlan plan = planned.plan();
        @Nullable Double own = station == null ? null : station.winderRatio();
        @Nullable
        Double ceiling =
                ceiling(planned, station).map(Torque::newtonMillimetres).orElse(null);
        return new WindBegun(
                context.ownId(),
                attempt.id(),
                motor.id(),
                station == null ? null : station.id(),
                station == null ? null : station.meter(),
                own == null ? event.winderRatio() : own,
                station == null ? null : station.divisionNmm(),
                station == null ? null : station.fullScaleNmm(),
                plan == null ? null : plan.targetCrankTurns(),
                plan == null ? null : plan.atFullStretchCrankTurns(),
                planned.aim().level().backOff(),
                ceiling,
                (ceiling == null ? StopRule.COUNT : StopRule.TORQUE)
                        .word(), // a wind that may end on torque says nothing of breaking
                planned.use(),
                context.device(),
                context.person(),
                atMs,
                false);
    }

    /** What ends a wind at this place: a ceiling below the meter's first mark or beyond its last cannot be read. */
    public static Optional<Torque> ceiling(MotorPlan planned, @Nullable StationAdded station) {
        Double division = station == null ? null : station.divisionNmm();
        Double fullScale = station == null ? null : station.fullScaleNmm();
        return Optional.ofNullable(planned.aim().ceilingTorque())
                .filter(c -> division == null || c.newtonMillimetres() >= division)
                .filter(c -> fullScale == null || c.newtonMillimetres() <= fullScale);
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
            return Decision.decided(NEEDLE, Fact.of("wind.mark", fact));
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage()));
        }
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
            acted(context, wind, phase.phase()).ifPresent(facts::add);
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
    private static boolean isOver(Tx tx, Wind wind) {
        return Optional.ofNullable(wind.begun().attemptId())
                .flatMap(attempt -> LiveAttempts.evidence(tx, attempt))
                .filter(known -> !known.isLastOfItsMotor(wind))
                .isPresent();
    }

    /** What moves its attempt, for whoever comes second. */
    private static Optional<Fact> acted(ActContext context, Wind wind, String phase) {
        String attempt = wind.begun().attemptId();
        AttemptAct act = MOVES.get(phase);
        return attempt == null || act == null ? Optional.empty() : Optional.of(PhaseGate.acted(context, attempt, act));
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
