package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Aim;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.action.StopHall;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.MotorUseStore;
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
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.StopRule;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindPaced;
import org.skeinday.winding.WindingPlan;

/** A motor wound without an attempt: for practice, or until it breaks. */
public final class WindAlone {
    private WindAlone() {}

    /**
     * The first crank turn; the wind's id is the act's with -0.
     *
     * @param stop count or breaking
     * @param station id of the winding place that the page showed, whose meter is read; null for the one at work
     * @param beats the metronome's, a minute; null without one
     */
    public record Begin(
            String motor,
            String stop,
            @Nullable String station,
            @Nullable Integer beats,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {
        /** @throws IllegalArgumentException for another word than the rules have */
        StopRule stopRule() {
            return StopRule.of(stop);
        }
    }

    /** Why this motor must not be wound now, in words; empty when it may. */
    public static Optional<String> whyNot(Tx tx, MotorLife life) {
        Optional<String> no = life.stage().isLoaded() ? life.whyNot(MotorDeed.WIND) : life.whyNotFlown();
        return no.isPresent()
                ? no
                : underWay(tx, life.motor().id())
                        .map(words -> life.motor().tag() + " is " + words + ": it is wound there, on the page Winding");
    }

    private static Optional<String> underWay(Tx tx, String motor) {
        return EventStore.next(tx).stream()
                .flatMap(event -> AttemptStore.ofEvent(tx, event.id()).stream())
                .filter(a -> a.state().isOpen() && motor.equals(a.motorId()))
                .findFirst()
                .map(a -> words(tx, a));
    }

    private static String words(Tx tx, AttemptNow attempt) {
        String entry =
                EntryStore.find(tx, attempt.entryId()).map(EntryAdded::name).orElse("an entry");
        return "in " + attempt.number().words() + " of " + entry;
    }

    /** The winding place that somebody chose, else the one at work; empty where it is prepared no more. @param id null for none */
    public static Optional<StationAdded> place(Tx tx, @Nullable String id) {
        return id == null
                ? StationStore.atWork(tx)
                : StationStore.all(tx).stream()
                        .filter(station -> station.id().equals(id))
                        .findFirst();
    }

    /**
     * How this motor is to be wound, with the ratio of the place, the lane of the day and the model that it must be for.
     *
     * @param uses that it has had
     * @param station where it is to be wound; empty where no winding place is prepared
     */
    public static MotorPlan plan(Tx tx, MotorAdded motor, int uses, Optional<StationAdded> station) {
        EventAdded event = EventStore.next(tx).orElse(null);
        if (event == null) {
            return new MotorPlan(
                    uses + 1,
                    null,
                    null,
                    "not known: no event is prepared that tells the winder's ratio",
                    Aim.practice());
        }
        return MotorPlan.of(
                event,
                Stations.ratio(station, event),
                motor,
                BatchStore.find(tx, motor.batchId()).orElse(null),
                model(tx, motor).orElse(null),
                uses,
                Aim.practice());
    }

    /** The one model that it can be for: its team's, wound the same way; empty when there are several or none. */
    public static Optional<ModelAdded> model(Tx tx, MotorAdded motor) {
        List<ModelAdded> fit = ModelStore.all(tx).stream()
                .filter(m -> m.team().equals(motor.team()) && m.turns() == motor.turns())
                .toList();
        return fit.size() == 1 ? Optional.of(fit.get(0)) : Optional.empty();
    }

    static Decision begin(Tx tx, ActContext context, Begin begin) {
        MotorLife life = MotorLifeStore.find(tx, begin.motor()).orElse(null);
        if (life == null) {
            return Decision.unknown("There is no such motor any more; look again");
        }
        Optional<StationAdded> station = place(tx, begin.station());
        if (station.isEmpty() && begin.station() != null) {
            return Decision.unknown("There is no such winding place any more; look again");
        }
        Optional<String> no = whyNot(tx, life);
        if (no.isPresent()) {
            return Decision.refused(no.get());
        }
        Optional<Decision> stopped = StopHall.refused(tx);
        if (stopped.isPresent()) {
            return stopped.get();
        }
        try {
            if (begin.beats() != null && begin.stopRule() == StopRule.BREAKING) {
                return Decision.refused("A break test is counted and never cranked to a metronome: what a metronome"
                        + " counts enters no fit, and the motor would be broken for nothing");
            }
            return new Decision.Decided(facts(tx, context, life, begin, station), Map.of(), WindActions.TOPICS);
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage()));
        }
    }

    private static List<Fact> facts(
            Tx tx, ActContext context, MotorLife life, Begin begin, Optional<StationAdded> station) {
        long sinceMs = life.step() == null ? 0 : life.step().atMs();
        long atMs = TapTime.of(context, begin.serverMs(), begin.boundMs(), sinceMs);
        List<Fact> facts = new ArrayList<>();
        WindBegun begun = begun(tx, context, life.motor(), begin, station, atMs);
        facts.add(Fact.of("wind.begun", begun));
        if (begin.beats() != null) {
            facts.add(Fact.of("wind.paced", new WindPaced(begun.id(), begin.beats())));
        }
        return facts;
    }

    /** A motor that is wound until it breaks has no target: what is planned at full stretch still tells its turns. */
    private static WindBegun begun(
            Tx tx, ActContext context, MotorAdded motor, Begin begin, Optional<StationAdded> at, long atMs) {
        @Nullable StationAdded station = at.orElse(null);
        MotorPlan planned = plan(tx, motor, MotorUseStore.all(tx).of(motor.id()), at);
        @Nullable WindingPlan plan = planned.plan();
        return new WindBegun(
                context.ownId(),
                null,
                motor.id(),
                station == null ? null : station.id(),
                station == null ? null : station.meter(),
                ratio(tx, station),
                station == null ? null : station.divisionNmm(),
                station == null ? null : station.fullScaleNmm(),
                plan == null || begin.stopRule() == StopRule.BREAKING ? null : plan.targetCrankTurns(),
                plan == null ? null : plan.atFullStretchCrankTurns(),
                planned.aim().level().backOff(),
                null,
                begin.stop(),
                planned.use(),
                context.device(),
                context.person(),
                atMs,
                begin.beats() != null);
    }

    private static double ratio(Tx tx, @Nullable StationAdded station) {
        @Nullable Double own = station == null ? null : station.winderRatio();
        return own == null ? BenchActions.ratio(tx) : own;
    }
}
