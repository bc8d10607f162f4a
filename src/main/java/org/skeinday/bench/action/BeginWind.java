package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.CalledAttempt;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.State;
import org.skeinday.attempt.action.ChooseStation;
import org.skeinday.attempt.action.GiveUpAttempt;
import org.skeinday.attempt.action.HandsThen;
import org.skeinday.attempt.action.PhaseGate;
import org.skeinday.attempt.action.PlaceHeld;
import org.skeinday.attempt.action.StopHall;
import org.skeinday.attempt.action.WhyNotFly;
import org.skeinday.attempt.action.WindingGate;
import org.skeinday.attempt.store.Aims;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.StationStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.StopRule;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.units.Torque;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindWinder;
import org.skeinday.winding.WindingPlan;

/** The first crank turn of an attempt: with which motor, at which winding place, and what was planned by then. */
public final class BeginWind {
    /** A first crank turn that comes in later than this has happened: to refuse it would lose the wind. */
    private static final long HAPPENED_MS = 10_000;

    private BeginWind() {}

    /**
     * The first crank turn for an attempt; the wind's id is the act's with -0.
     *
     * @param motor that the page showed: a tap that comes late is of the motor that was wound, not of its spare
     * @param station id of the winding place that the page showed, whose meter is read; null for the attempt's own
     */
    public record Begin(
            String attempt,
            @Nullable String motor,
            @Nullable String station,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    /** How the motor of an attempt is to be wound. */
    public static MotorPlan plan(Tx tx, AttemptNow attempt, MotorAdded motor, Optional<StationAdded> station) {
        @Nullable
        ModelAdded model = Optional.ofNullable(attempt.modelId())
                .flatMap(id -> ModelStore.find(tx, id))
                .orElse(null);
        return Aims.planAt(tx, entry(tx, attempt), attempt.id(), motor, model, station);
    }

    private static EntryAdded entry(Tx tx, AttemptNow attempt) {
        return EntryStore.find(tx, attempt.entryId()).orElseThrow();
    }

    /** As the page showed it, since that meter was read; else where the attempt is wound. */
    private static Optional<StationAdded> station(Tx tx, AttemptNow attempt, Begin begin) {
        return StationStore.all(tx).stream()
                .filter(station -> station.id().equals(begin.station()))
                .findFirst()
                .or(() -> Stations.of(tx, entry(tx, attempt), attempt.id()));
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
            return attempt.state() == State.CALLED && !isStopped(tx, attempt)
                    ? Decision.refused(no.get())
                    : PhaseGate.wrongNow(tx, context, attempt, no.get());
        }
        if (isBegun(tx, attempt.id(), motor)) {
            return PhaseGate.wrongNow(
                    tx, context, attempt, "This wind was begun already, on another device: it is read there");
        }
        long calledMs = attempt.calledAtMs() == null ? 0 : attempt.calledAtMs();
        long atMs = TapTime.of(context, begin.serverMs(), begin.boundMs(), calledMs);
        boolean toCome = context.now().toEpochMilli() - atMs < HAPPENED_MS; // what has happened is kept
        Optional<StationAdded> station = station(tx, attempt, begin);
        Optional<Decision> waits = toCome ? StopHall.refused(tx, attempt.eventId()) : Optional.empty();
        if (waits.isEmpty() && toCome && !spare && attempt.state() == State.CALLED) { // asked of the present motor
            waits = station.flatMap(at -> PlaceHeld.refused(tx, attempt, at))
                    .or(() -> WindingGate.refused(tx, attempt))
                    .map(Decision::refused);
        }
        if (waits.isPresent()) {
            return waits.get();
        }
        // a late tap of the motor before says nothing of where the present one is wound
        List<Fact> facts = new ArrayList<>(spare ? List.of() : ChooseStation.stays(attempt.id(), station));
        facts.addAll(wound(tx, attempt, begun(tx, context, attempt, life.motor(), station.orElse(null), atMs)));
        if (!spare && Attempt.of(attempt) instanceof CalledAttempt called) {
            facts.addAll(HandsThen.kept(tx, attempt));
            facts.add(Fact.of("attempt.moved", called.startWinding(atMs)));
            facts.add(PhaseGate.acted(context, attempt.id(), AttemptAct.FIRST_TURN));
        }
        boolean runBack = spare || attempt.state() == State.SCRUBBED;
        if (!spare) {
            GiveUpAttempt.turnsOn(tx, attempt, motor, atMs).ifPresent(facts::add);
        }
        return new Decision.Decided(facts, Map.of(), runBack ? PhaseGate.FIRST : WindActions.TOPICS);
    }

    /** The wind, and who is named for winding now: whoever is named later has not wound it. */
    private static List<Fact> wound(Tx tx, AttemptNow attempt, WindBegun begun) {
        String person = Assignments.named(tx, entry(tx, attempt), attempt.number(), "winds")
                .map(assigned -> assigned.people().get(0))
                .orElse(WindWinder.NOBODY);
        return List.of(Fact.of("wind.begun", begun), Fact.of("wind.winder", new WindWinder(begun.id(), person)));
    }

    /** Its motor broke, and nobody has taken the spare. */
    private static boolean isStopped(Tx tx, AttemptNow attempt) {
        return LiveAttempts.find(tx, attempt.id())
                .filter(live -> live.phase().name() == AttemptPhase.Name.BROKE)
                .isPresent();
    }

    /** A motor that was run back since may be wound once more. */
    private static boolean isBegun(Tx tx, String attempt, String motor) {
        return LiveAttempts.evidence(tx, attempt).stream()
                .flatMap(known -> known.windsNotRunBack().stream())
                .anyMatch(wind -> wind.begun().motorId().equals(motor));
    }

    private static WindBegun begun(
            Tx tx,
            ActContext context,
            AttemptNow attempt,
            MotorAdded motor,
            @Nullable StationAdded station,
            long atMs) {
        EventAdded event = EventStore.find(tx, attempt.eventId()).orElseThrow();
        MotorPlan planned = plan(tx, attempt, motor, Optional.ofNullable(station));
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
}
