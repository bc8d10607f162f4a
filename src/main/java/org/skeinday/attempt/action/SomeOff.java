package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.TurnsTakenOff;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.CrankTurns;

/** Some turns of a held motor are taken off, as the captain says: the hold does not begin anew. */
final class SomeOff {
    private static final String FIELD = "turns-off";

    /** @param turns crank turns, as typed @param seen what the form showed, as {@link org.skeinday.attempt.Seen} writes it @param insist as {@link AskedOnce} has it */
    record Told(
            String attempt,
            String turns,
            @Nullable String seen,
            @Nullable String insist) {}

    private SomeOff() {}

    static Decision decide(Tx tx, ActContext context, Told told) {
        return PhaseGate.captain(
                tx,
                context,
                told.attempt(),
                told.seen(),
                AttemptAct.SOME_OFF,
                known -> takenOff(tx, context, known, told));
    }

    private static Decision takenOff(Tx tx, ActContext context, AttemptEvidence known, Told told) {
        try {
            Double turns = CrankTurns.part(told.turns());
            return turns == null
                    ? Decision.refused(FIELD, "Say how many crank turns were taken off, for example 2")
                    : asked(tx, known, turns, told.insist())
                            .orElseGet(() ->
                                    new Decision.Decided(facts(context, known, turns), Map.of(), PhaseGate.TOPICS));
        } catch (IllegalArgumentException e) {
            return Decision.refused(FIELD, String.valueOf(e.getMessage()));
        }
    }

    /** No more comes off than can have been on. */
    private static Optional<Decision> asked(Tx tx, AttemptEvidence known, double turns, @Nullable String insist) {
        return Optional.ofNullable(known.now().motorId())
                .flatMap(motor -> MotorLifeStore.find(tx, motor))
                .flatMap(life -> TurnsDoubted.asked(
                        RunBackMotor.breakingTurns(tx, life), turns * RunBackMotor.ratio(tx, known), insist, FIELD));
    }

    /** A motor that hung off the meter hangs on it again: the reader's keys go on with it. */
    private static List<Fact> facts(ActContext context, AttemptEvidence known, double turns) {
        long atMs = context.now().toEpochMilli();
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of(
                "attempt.turns-off",
                new TurnsTakenOff(
                        context.nextId(),
                        known.now().id(),
                        String.valueOf(known.now().motorId()),
                        turns,
                        atMs,
                        context.personOrNull(),
                        context.device())));
        Optional<Fact> back = known.presentWind()
                .flatMap(wind -> BrokenMotor.backOn(context, wind, atMs))
                .map(tap -> Fact.of("wind.phase", tap));
        back.ifPresent(facts::add);
        facts.add(PhaseGate.acted(context, known.now().id(), AttemptAct.SOME_OFF));
        return facts;
    }
}
