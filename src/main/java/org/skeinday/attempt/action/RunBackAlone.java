package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.HallStopped;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.HallStops;
import org.skeinday.attempt.store.Stations;
import org.skeinday.attempt.store.WoundAlone;
import org.skeinday.attempt.store.WoundBeside;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindPhase;

/** A motor that no attempt has in hand, or that its attempt has changed for another, is run back, and somebody says how many turns were on. */
final class RunBackAlone {
    /**
     * What was told of it.
     *
     * @param turns crank turns that were on, as typed
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them; null where none were
     * @param before "yes" where it was run back before anybody asked, and nobody counted; for a motor that was only cranked
     */
    record Told(
            String motor,
            String turns,
            @Nullable String before,
            @Nullable String insist) {
        boolean isFromBefore() {
            return "yes".equals(before);
        }
    }

    private RunBackAlone() {}

    static Decision decide(Tx tx, ActContext context, Told told) {
        String event = EventStore.next(tx).map(EventAdded::id).orElse(HallStopped.PRACTICE);
        WoundBeside beside = WoundBeside.now(tx, event).stream()
                .filter(w -> w.motor().equals(told.motor()))
                .findFirst()
                .orElse(null);
        if (beside != null) {
            return RunBackMotor.withTurns(
                    told.turns(), turns -> RunBackMotor.changed(tx, context, beside, turns, told.insist()));
        }
        WoundAlone wound = wound(tx, event, context).stream()
                .filter(w -> w.motor().id().equals(told.motor()))
                .findFirst()
                .orElse(null);
        if (wound == null) {
            return new Decision.Outdated("Nothing is said to be on that motor any more: look again.");
        }
        return told.isFromBefore()
                ? before(context, wound)
                : RunBackMotor.withTurns(
                        told.turns(),
                        turns -> TurnsDoubted.asked(
                                        RunBackMotor.breakingTurns(tx, wound.life()),
                                        turns * ratio(tx, wound),
                                        told.insist(),
                                        "turns")
                                .orElseGet(() -> new Decision.Decided(
                                        facts(tx, context, wound, turns), Map.of(), PhaseGate.FIRST)));
    }

    /** As the page that asks has it: what it asks for can be answered for as long as it asks. */
    private static List<WoundAlone> wound(Tx tx, String event, ActContext context) {
        return HallStops.now(tx)
                .map(stop -> WoundAlone.since(tx, stop))
                .orElseGet(() -> WoundAlone.now(tx, event, context.now().toEpochMilli()));
    }

    /** Nobody counted: the wind is over without turns, so that no fit believes a number that somebody made up. */
    private static Decision before(ActContext context, WoundAlone wound) {
        @Nullable Wind wind = wound.wind();
        if (wind == null || !wound.isOnlyCranked()) {
            return Decision.refused(
                    "turns", "The bench says that it is wound: say there that it is run back, or say the turns here");
        }
        List<Fact> facts = new ArrayList<>(offMeter(context, wind));
        facts.add(acted(context, wound));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    private static List<Fact> facts(Tx tx, ActContext context, WoundAlone wound, double crankTurns) {
        @Nullable Wind wind = wound.wind();
        boolean use = MotorUses.isUse(crankTurns * ratio(tx, wound), RunBackMotor.breakingTurns(tx, wound.life()));
        List<Fact> facts = new ArrayList<>(wind == null ? List.of() : ended(context, wind, crankTurns));
        facts.addAll(RunBackMotor.motor(context, wound.life(), use));
        facts.add(acted(context, wound));
        return facts;
    }

    private static double ratio(Tx tx, WoundAlone wound) {
        @Nullable Wind wind = wound.wind();
        return wind == null ? Stations.usualRatio(tx) : wind.begun().ratio();
    }

    /** No attempt has the motor: who comes second hears by the motor's own id who was quicker. */
    private static Fact acted(ActContext context, WoundAlone wound) {
        return PhaseGate.acted(context, wound.motor().id(), AttemptAct.RUN_BACK);
    }

    /** The wind is over: it stopped with what was on, and its motor is off the meter. */
    private static List<Fact> ended(ActContext context, Wind wind, double crankTurns) {
        List<Fact> facts = new ArrayList<>(offMeter(context, wind));
        String id = wind.begun().id();
        facts.add(Fact.of("wind.counted", new WindCounted(id, null, (int) Math.round(crankTurns), null, wind.paced())));
        return facts;
    }

    private static List<Fact> offMeter(ActContext context, Wind wind) {
        long atMs = Math.max(context.now().toEpochMilli(), wind.begun().atMs());
        List<Fact> facts = new ArrayList<>();
        if (wind.phase().compareTo(Wind.Phase.STOPPED) < 0) {
            facts.add(phase(context, wind, WindPhase.STOPPED, atMs));
        }
        if (wind.phase() != Wind.Phase.OFF_METER) {
            facts.add(phase(context, wind, WindPhase.OFF_METER, atMs + 1));
        }
        return facts;
    }

    private static Fact phase(ActContext context, Wind wind, String phase, long atMs) {
        long elapsedMs = atMs - wind.begun().atMs();
        return Fact.of(
                "wind.phase", new WindPhase(context.nextId(), wind.begun().id(), phase, elapsedMs, atMs));
    }
}
