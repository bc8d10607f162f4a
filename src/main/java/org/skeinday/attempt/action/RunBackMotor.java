package org.skeinday.attempt.action;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.MotorPlan;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.State;
import org.skeinday.attempt.TurnsRunBack;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.Stations;
import org.skeinday.attempt.store.WoundBeside;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.Removed;
import org.skeinday.winding.CrankTurns;
import org.skeinday.winding.Wind;
import org.skeinday.winding.store.WindStore;

/**
 * A wound motor is run back, and somebody says how many turns were on. Before the attempt is given up it is called again
 * afterwards; an attempt that was given up is over with the answer.
 */
final class RunBackMotor {
    /**
     * @param motor that the page showed
     * @param turns crank turns that were on, as typed
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them; null where none were
     */
    record Told(
            String attempt,
            String motor,
            String turns,
            @Nullable String insist) {}

    private RunBackMotor() {}

    static Decision decide(Tx tx, ActContext context, Told told) {
        AttemptEvidence known = LiveAttempts.evidence(tx, told.attempt()).orElse(null);
        if (known == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        LiveAttempt live = LiveAttempt.of(known);
        Optional<Decision> refused = PhaseGate.refused(tx, context, live, AttemptAct.RUN_BACK);
        if (refused.isPresent()) {
            return refused.get();
        }
        MotorLife life = Optional.ofNullable(live.motorId())
                .flatMap(id -> MotorLifeStore.find(tx, id))
                .orElse(null);
        if (life == null || !told.motor().equals(life.motor().id())) {
            return new Decision.Outdated("This attempt has another motor by now: look again.");
        }
        return withTurns(
                told.turns(),
                turns -> TurnsDoubted.asked(breakingTurns(tx, life), turns * ratio(tx, known), told.insist(), "turns")
                        .orElseGet(() -> runBack(tx, context, known, life, turns)));
    }

    /** What comes of crank turns that were on, as typed; refused where none are said. */
    static Decision withTurns(String typed, Function<Double, Decision> then) {
        try {
            Double turns = CrankTurns.part(typed);
            return turns == null
                    ? Decision.refused("turns", "Say how many crank turns were on; 0 where none were")
                    : then.apply(turns);
        } catch (IllegalArgumentException e) {
            return Decision.refused("turns", String.valueOf(e.getMessage()));
        }
    }

    private static Decision runBack(
            Tx tx, ActContext context, AttemptEvidence known, MotorLife life, double crankTurns) {
        @Nullable Wind wind = known.presentWind().orElse(null);
        boolean use = MotorUses.isUse(crankTurns * ratio(tx, known), breakingTurns(tx, life));
        State state = known.now().state() == State.SCRUBBED ? State.SCRUBBED : State.CALLED;
        List<Fact> facts = new ArrayList<>();
        facts.add(fact(context, known.now(), life, wind, crankTurns, use, state));
        facts.addAll(motor(context, life, use));
        if (state == State.CALLED) {
            facts.addAll(AsksAgain.beforeWinding(tx, context, known.now().id(), AsksAgain.RUN_BACK));
        }
        facts.add(PhaseGate.acted(context, known.now().id(), AttemptAct.RUN_BACK));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    /** A motor that the attempt no longer has: what it does with the present one goes on. */
    static Decision changed(Tx tx, ActContext context, WoundBeside wound, double crankTurns, @Nullable String insist) {
        MotorLife life = MotorLifeStore.find(tx, wound.motor()).orElseThrow();
        Wind wind = WindStore.find(tx, wound.wind()).orElseThrow();
        return TurnsDoubted.asked(
                        breakingTurns(tx, life), crankTurns * wind.begun().ratio(), insist, "turns")
                .orElseGet(() -> changed(tx, context, wound, life, wind, crankTurns));
    }

    private static Decision changed(
            Tx tx, ActContext context, WoundBeside wound, MotorLife life, Wind wind, double crankTurns) {
        AttemptNow attempt = AttemptStore.find(tx, wound.attempt()).orElseThrow();
        boolean use = MotorUses.isUse(crankTurns * wind.begun().ratio(), breakingTurns(tx, life));
        List<Fact> facts = new ArrayList<>();
        facts.add(fact(context, attempt, life, wind, crankTurns, use, attempt.state()));
        facts.addAll(motor(context, life, use));
        facts.add(PhaseGate.acted(context, wound.motor(), AttemptAct.RUN_BACK));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    private static Fact fact(
            ActContext context,
            AttemptNow attempt,
            MotorLife life,
            @Nullable Wind wind,
            double crankTurns,
            boolean use,
            State state) {
        return Fact.of(
                "attempt.run-back",
                new TurnsRunBack(
                        context.nextId(),
                        attempt.id(),
                        life.motor().id(),
                        wind == null ? null : wind.begun().id(),
                        crankTurns,
                        use,
                        state.word(),
                        context.now().toEpochMilli(),
                        context.personOrNull(),
                        context.device()));
    }

    /** Of the winder that it was wound by, else of the one at its place. */
    static double ratio(Tx tx, AttemptEvidence known) {
        Wind wind = known.presentWind().orElse(null);
        if (wind != null) {
            return wind.begun().ratio();
        }
        EventAdded event = EventStore.find(tx, known.now().eventId()).orElseThrow();
        EntryAdded entry = EntryStore.find(tx, known.now().entryId()).orElseThrow();
        return Stations.ratio(Stations.of(tx, entry, known.now().id()), event);
    }

    /** In motor turns; null while not known. */
    static @Nullable Double breakingTurns(Tx tx, MotorLife life) {
        return MotorPlan.breakingTurns(
                        life.motor(),
                        BatchStore.find(tx, life.motor().batchId()).orElse(null))
                .map(BigDecimal::doubleValue)
                .orElse(null);
    }

    /** What so few turns have not used is as it was; what they have used is run back and must rest. */
    static List<Fact> motor(ActContext context, MotorLife life, boolean use) {
        long atMs = context.now().toEpochMilli();
        MotorStep last = life.step();
        MotorStage stage = life.stage();
        if (stage.isOut() || stage == MotorStage.GRITTY) {
            return List.of(); // what was said of it since is true all the same
        }
        if (!use && last != null && last.deed().equals(MotorDeed.WIND.word())) {
            return List.of(Fact.of("motor.step.undone", new Removed(last.id())));
        }
        if (!use && !stage.isLoaded()) {
            return List.of();
        }
        List<Fact> facts = new ArrayList<>();
        MotorLife wound = life;
        if (!MotorDeed.UNWIND.isAllowedFrom(stage)) { // nobody had said that it was wound
            MotorStep wind = step(context, life, MotorDeed.WIND, atMs);
            facts.add(Fact.of("motor.step", wind));
            wound = new MotorLife(life.motor(), wind, life.handedIn(), 0);
        }
        facts.add(Fact.of("motor.step", step(context, wound, MotorDeed.UNWIND, atMs)));
        return facts;
    }

    private static MotorStep step(ActContext context, MotorLife life, MotorDeed deed, long atMs) {
        var by = new MotorStep.By(context.nextId(), atMs, context.person(), context.device());
        return life.step(deed, by, null, MotorStep.Told.NOTHING);
    }
}
