package org.skeinday.attempt.action;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.OfficialFlights;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.RightTeam;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.MotorsInHand;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.Decision;
import org.skeinday.standing.Scoring;

/** What an entry may fly, and when it may fly no more: the answer is the reason why not. */
public final class WhyNotFly {
    private WhyNotFly() {}

    /** The list offers only what the entry may fly; a form may name anything. */
    static Optional<Decision> notItsOwn(Tx tx, EntryAdded entry, @Nullable String model, @Nullable String motor) {
        Optional<String> wrongModel = model == null
                ? Optional.empty()
                : ModelStore.find(tx, model)
                        .map(m -> RightTeam.whyNot(entry, "model " + m.name(), m.team()))
                        .orElse(Optional.of("There is no such model; choose one of the list"));
        if (wrongModel.isPresent()) {
            return wrongModel.map(words -> Decision.refused("model", words));
        }
        return motor == null
                ? Optional.empty()
                : wrongMotor(tx, entry, motor).map(words -> Decision.refused("motor", words));
    }

    /** Why an entry may not fly with a motor, whoever asks for it; empty when it may. */
    public static Optional<String> wrongMotor(Tx tx, EntryAdded entry, String motor) {
        return MotorStore.find(tx, motor)
                .map(m -> RightTeam.whyNot(entry, "motor " + m.tag(), m.team()))
                .orElse(Optional.of("There is no such motor; choose one of the list"));
    }

    /** Why a motor is not flown as it is; empty when it may be, or there is none. */
    static Optional<String> whyNotFlown(Tx tx, @Nullable String motor) {
        return motor == null ? Optional.empty() : MotorLifeStore.find(tx, motor).flatMap(MotorLife::whyNotFlown);
    }

    /** Why an attempt cannot begin with a motor, or go on with it: it has turns on, was just flown, or is another's. */
    static Optional<String> notReady(Tx tx, String event, @Nullable String motor) {
        return motor == null
                ? Optional.empty()
                : MotorLifeStore.find(tx, motor).flatMap(life -> notReady(tx, event, life));
    }

    private static Optional<String> notReady(Tx tx, String event, MotorLife life) {
        String tag = life.motor().tag();
        Optional<String> holder = Optional.ofNullable(
                        MotorsInHand.byMotor(tx, event).get(life.motor().id()))
                .flatMap(attempt -> AttemptStore.find(tx, attempt))
                .map(attempt -> tag + " is in the hands of " + entryName(tx, attempt) + "'s "
                        + attempt.number().words() + ", which is not over: choose another motor");
        boolean hasTurns = life.stage().isLoaded() || life.stage() == MotorStage.FLOWN;
        return holder.or(() -> hasTurns
                ? Optional.of(tag + " is " + life.stage().word() + ": run it back first, or choose another motor")
                : Optional.empty());
    }

    static String entryName(Tx tx, AttemptNow attempt) {
        return EntryStore.find(tx, attempt.entryId()).map(EntryAdded::name).orElse("another entry");
    }

    /** Why an entry cannot have another attempt now; empty when it can. @param own its attempts so far */
    public static Optional<String> whyNoMore(Tx tx, EntryAdded entry, Scoring scoring, List<AttemptNow> own) {
        for (AttemptNow attempt : own) {
            if (attempt.state().isOpen()) {
                return Optional.of(stillUnderWay(tx, entry.name(), attempt));
            }
        }
        return OfficialFlights.tally(own, scoring).flightsLeft() > 0
                ? Optional.empty()
                : Optional.of(entry.name() + " has had its " + scoring.flights().flights()
                        + " attempts; the rules allow no more");
    }

    /** What its phase is, and the acts by which it comes to an end. */
    static String stillUnderWay(Tx tx, String entry, AttemptNow attempt) {
        return PhaseWords.stillUnderWay(
                entry + "'s " + attempt.number().words(),
                LiveAttempts.find(tx, attempt.id()).orElseThrow());
    }
}
