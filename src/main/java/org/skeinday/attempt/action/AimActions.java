package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Attempt;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptAimed;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.MotorTaken;
import org.skeinday.attempt.State;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.platform.record.TypedFields;
import org.skeinday.units.BareNumber;
import org.skeinday.units.Torque;

/** What is wanted of an attempt's wind, and another motor when the first cannot be flown. */
public final class AimActions {
    private static final int LONGEST = 30;

    private AimActions() {}

    /**
     * Torques as typed, empty for none.
     *
     * @param unit of those that were typed without one
     * @param seen when they were set last as the form showed it; null or empty where it showed nothing
     */
    public record Aimed(
            String attempt,
            String launch,
            String ceiling,
            String unit,
            @Nullable String seen) {}

    /**
     * @param seenMotor the motor that the page showed, for two who choose at once
     * @param meant ids of motors, parted by spaces, of which the page said that the plan means them for another entry
     */
    public record Take(
            String attempt,
            String motor,
            String seenMotor,
            @Nullable String meant,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        var quicker = new Quicker(people);
        return List.of(
                quicker.told("attempt.aim", Aimed.class, AimActions::aim, a -> SaidMeanwhile.torques(a.attempt())),
                quicker.told("attempt.take-motor", Take.class, AimActions::take, Take::attempt));
    }

    static Decision aim(Tx tx, ActContext context, Aimed aimed) {
        AttemptNow now = AttemptStore.find(tx, aimed.attempt()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such attempt; look again");
        }
        if (!now.state().isBeforeRelease()) {
            return Decision.refused(
                    "launch", PhaseGate.wrong(tx, context, now, "After the release what was wanted stays"));
        }
        var form = new TypedFields();
        @Nullable Torque launch = form.read("launch", aimed.launch(), typed -> torque(typed, aimed.unit()));
        @Nullable Torque ceiling = form.read("ceiling", aimed.ceiling(), typed -> torque(typed, aimed.unit()));
        return form.refused()
                .or(() -> SaidMeanwhile.since(tx, SaidMeanwhile.torques(now.id()), aimed.seen()))
                .orElseGet(() -> wanted(context, now, aimed, launch, ceiling));
    }

    private static Decision wanted(
            ActContext context, AttemptNow now, Aimed aimed, @Nullable Torque launch, @Nullable Torque ceiling) {
        try {
            var fact = new AttemptAimed(
                    now.id(),
                    launch == null ? null : launch.newtonMillimetres(),
                    launch == null ? null : withUnit(aimed.launch(), aimed.unit()),
                    ceiling == null ? null : ceiling.newtonMillimetres(),
                    ceiling == null ? null : withUnit(aimed.ceiling(), aimed.unit()));
            return Decision.decided(
                    AttemptActions.TOPICS,
                    Fact.of("attempt.aimed", fact),
                    SaidMeanwhile.told(context, SaidMeanwhile.torques(now.id()), "Set launch torque and torque limit"));
        } catch (IllegalArgumentException e) {
            return Decision.refused("launch", String.valueOf(e.getMessage()));
        }
    }

    /** Null for nothing typed. */
    static @Nullable Torque torque(String typed, String unit) {
        if (typed.length() > LONGEST) {
            throw new IllegalArgumentException(
                    "A torque has at most " + LONGEST + " characters, for example 0.62 in-ozf");
        }
        return typed.isBlank() ? null : Torque.parse(typed, unit);
    }

    /** Files carry a torque with its unit. */
    static String withUnit(String typed, String unit) {
        return BareNumber.with(typed, unit);
    }

    static Decision take(Tx tx, ActContext context, Take take) {
        AttemptNow now = AttemptStore.find(tx, take.attempt()).orElse(null);
        MotorLife life = MotorLifeStore.find(tx, take.motor()).orElse(null);
        if (now == null || life == null) {
            return Decision.unknown("There is no such attempt or motor; look again");
        }
        if (take.motor().equals(now.motorId())) { // two tablets chose the same
            return new Decision.Decided(List.of(), Map.of(), AttemptActions.MOVED);
        }
        if (!take.seenMotor().equals(now.motorId() == null ? "" : now.motorId())) {
            return new Decision.Outdated("Somebody was quicker: another motor was taken already. Look again.");
        }
        Optional<Decision> refused = LiveAttempts.find(tx, now.id())
                .flatMap(live -> PhaseGate.refused(tx, context, live, AttemptAct.TAKE_SPARE));
        if (refused.isPresent()) {
            return refused.get();
        }
        Attempt.BeforeRelease before = (Attempt.BeforeRelease) Attempt.of(now);
        Optional<String> no = EntryStore.find(tx, now.entryId())
                .flatMap(entry -> WhyNotFly.wrongMotor(tx, entry, take.motor()))
                .or(life::whyNotFlown)
                .or(() -> WhyNotFly.notReady(tx, now.eventId(), take.motor()))
                .or(() -> EntryStore.find(tx, now.entryId())
                        .flatMap(entry -> PlannedForAnother.asked(tx, entry, take.motor(), take.meant())));
        if (no.isPresent()) {
            return Decision.refused(no.get());
        }
        long calledMs = now.calledAtMs() == null ? 0 : now.calledAtMs();
        long atMs = TapTime.of(context, take.serverMs(), take.boundMs(), calledMs);
        MotorTaken taken = before.take(take.motor(), atMs);
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("attempt.motor", taken)));
        facts.addAll(AsksAgain.beforeWinding(tx, context, now.id(), AsksAgain.OTHER_MOTOR));
        if (now.state() == State.CALLED) {
            MotorStore.find(tx, taken.motorId())
                    .ifPresent(m -> facts.addAll(
                            PlaceReopens.byMotor(tx, context, now.eventId(), m, AttemptsWoundAt.of(tx, now))));
        }
        facts.add(PhaseGate.acted(context, now.id(), AttemptAct.TAKE_SPARE));
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }
}
