package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.action.AttemptActions;
import org.skeinday.attempt.action.BrokenMotor;
import org.skeinday.attempt.store.HallStops;
import org.skeinday.attempt.store.MotorsInHand;
import org.skeinday.attempt.store.Stations;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.TeamUnits;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.ToldOfBreak;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorInspected;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorPlace;
import org.skeinday.motor.MotorPlaced;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.Wait;
import org.skeinday.motor.store.InspectionStore;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.TapTime;
import org.skeinday.units.BareNumber;
import org.skeinday.units.Torque;
import org.skeinday.winding.store.KnownBounds;

/** What helpers do to motors, taking it back, and putting a motor first. */
public final class BenchActions {
    public static final Set<String> TOPICS = Set.of("motors");
    /** What is done to a motor in hand, or while the hall is stopped, may end a wind and come before everything else. */
    static final Set<String> IN_HAND = Set.of("motors", "attempts", "winds", "checks", "first");

    private BenchActions() {}

    /**
     * Something was done to a motor.
     *
     * @param seen the step that the page showed as the last one, empty for none
     * @param crankTurns and {@code torque} of a break, as typed
     * @param unit of a torque without one, as it stood under the field; null where the page said none: the team's
     * @param insist doubts that were asked about, as {@link AskedOnce#FIELD} named them; null where none were
     * @param serverMs and {@code boundMs}: when, by the server's clock as the device knew it
     */
    public record Step(
            String motor,
            String deed,
            @Nullable String seen,
            @Nullable String reason,
            @Nullable String crankTurns,
            @Nullable String torque,
            @Nullable String unit,
            @Nullable String insist,
            @Nullable Long serverMs,
            @Nullable Long boundMs) {}

    /** Takes the last step of a motor back. */
    public record Undo(String step) {}

    /** Puts a motor before all others, or back to where attempts need it. */
    public record Place(String motor, boolean first) {}

    /** Handed in at the impound, or given back. */
    public record Impound(String motor, boolean in) {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        List<ActKind<?>> kinds = new ArrayList<>(JudgeBreak.kinds(people));
        kinds.addAll(List.of(
                new ActKind<>("bench.step", Step.class, BenchActions::step),
                new ActKind<>("motor.not-broken", MistakenBreak.NotBroken.class, MistakenBreak::decide),
                new ActKind<>("motor.break-counted", CountBreak.Told.class, CountBreak::decide),
                new ActKind<>("bench.undo", Undo.class, BenchActions::undo),
                new ActKind<>("bench.place", Place.class, BenchActions::place),
                new ActKind<>("bench.impound", Impound.class, BenchActions::impound),
                new ActKind<>("bench.wait", WaitActions.Change.class, WaitActions::change),
                new ActKind<>("clock.jumped", WaitActions.Jump.class, WaitActions::jumped),
                new ActKind<>("clock.slept", WaitActions.Slept.class, WaitActions::slept)));
        return List.copyOf(kinds);
    }

    static Decision step(Tx tx, ActContext context, Step step) {
        MotorLife life = MotorLifeStore.find(tx, step.motor()).orElse(null);
        MotorDeed deed = MotorDeed.of(step.deed()).orElse(null);
        if (life == null || deed == null) {
            return Decision.unknown("There is no such motor, or nothing like that is done to motors; look again");
        }
        String last = life.step() == null ? "" : life.step().id();
        if (step.seen() != null && !step.seen().equals(last)) {
            return overtaken(life, deed);
        }
        Optional<String> no = life.whyNot(deed);
        if (no.isPresent()) {
            return Decision.refused(no.get());
        }
        long sinceMs = life.step() == null ? 0 : life.step().atMs();
        long atMs = TapTime.of(context, step.serverMs(), step.boundMs(), sinceMs);
        String reason = step.reason() == null ? "" : step.reason().strip();
        if (reason.length() > AttemptActions.LONGEST_REASON) {
            return Decision.refused("reason", AttemptActions.tooLong(reason));
        }
        if (reason.isEmpty() && life.needsReason(deed, atMs)) {
            return Decision.refused(
                    "reason",
                    life.motor().tag() + " has not waited long enough: say why it goes on now. It stays in the record");
        }
        return done(tx, context, life, deed, step, atMs, reason.isEmpty() ? null : reason);
    }

    /** The same done by two is done once; something else has to be looked at. */
    private static Decision overtaken(MotorLife life, MotorDeed deed) {
        return life.stage() == deed.to()
                ? new Decision.Decided(List.of(), Map.of(), TOPICS)
                : Decision.refused("Somebody was quicker: " + life.motor().tag() + " is "
                        + life.stage().word() + " by now. Look again, then decide");
    }

    private static Decision done(
            Tx tx, ActContext context, MotorLife life, MotorDeed deed, Step step, long atMs, @Nullable String reason) {
        String typedTurns = deed == MotorDeed.BREAK && step.crankTurns() != null
                ? step.crankTurns().strip()
                : "";
        String unit = step.unit() == null ? TeamUnits.of(tx).torqueUnitTyped() : step.unit();
        String typedTorque =
                deed == MotorDeed.BREAK && step.torque() != null ? BareNumber.with(step.torque(), unit) : "";
        if (!typedTurns.isEmpty() && !typedTurns.matches("[1-9]\\d{0,4}")) {
            return Decision.refused(
                    "crankTurns", "Crank turns must be a whole number from 1 to 99999, but were '" + typedTurns + "'");
        }
        Double turns = typedTurns.isEmpty() ? null : Integer.parseInt(typedTurns) * ratio(tx);
        try {
            Double torque =
                    typedTorque.isEmpty() ? null : Torque.parse(typedTorque).newtonMillimetres();
            Optional<Decision> asked =
                    AskedOnce.about(doubts(tx, life, turns, torque), step.insist(), BenchActions::fieldOfBreak);
            if (asked.isPresent()) {
                return asked.get();
            }
            var told = new MotorStep.Told(reason, turns, torque, typedTorque.isEmpty() ? null : typedTorque);
            var by = new MotorStep.By(context.ownId(), atMs, context.person(), context.device());
            Wait wait = deed.waits().map(name -> MotorLifeStore.wait(tx, name)).orElse(null);
            return Decision.decided(topics(tx, life), Fact.of("motor.step", life.step(deed, by, wait, told)));
        } catch (IllegalArgumentException e) {
            return Decision.refused("torque", String.valueOf(e.getMessage()));
        }
    }

    private static List<Doubted> doubts(
            Tx tx, MotorLife life, @Nullable Double motorTurns, @Nullable Double torqueNmm) {
        if (motorTurns == null && torqueNmm == null) {
            return List.of();
        }
        var bounds = new KnownBounds(tx);
        return new ToldOfBreak(
                        motorTurns,
                        torqueNmm,
                        bounds.scale(),
                        bounds.breakingTurns(life.motor().id()))
                .doubts();
    }

    private static String fieldOfBreak(Measured what) {
        return what == Measured.CRANK_TURNS ? "crankTurns" : "torque";
    }

    private static Set<String> topics(Tx tx, MotorLife life) {
        boolean first = HallStops.now(tx).isPresent()
                || EventStore.next(tx)
                        .filter(event -> MotorsInHand.byMotor(tx, event.id())
                                .containsKey(life.motor().id()))
                        .isPresent();
        return first ? IN_HAND : TOPICS;
    }

    static double ratio(Tx tx) {
        return Stations.usualRatio(tx);
    }

    static Decision undo(Tx tx, ActContext context, Undo undo) {
        return MotorLifeStore.stands(tx, undo.step())
                ? new Decision.Decided(BrokenMotor.undone(tx, context, undo.step()), Map.of(), IN_HAND)
                : Decision.refused("Something was done to this motor since then: it cannot be taken back any more");
    }

    static Decision place(Tx tx, ActContext context, Place place) {
        if (MotorStore.find(tx, place.motor()).isEmpty()) {
            return Decision.unknown("There is no such motor; look again");
        }
        Long at = place.first() ? MotorLifeStore.firstPlace(tx) : null;
        return Decision.decided(TOPICS, Fact.of("motor.placed", new MotorPlaced(place.motor(), at)));
    }

    static Decision impound(Tx tx, ActContext context, Impound impound) {
        MotorLife life = MotorLifeStore.find(tx, impound.motor()).orElse(null);
        if (life == null) {
            return Decision.unknown("There is no such motor; look again");
        }
        MotorAdded motor = life.motor();
        if (life.handedIn() == impound.in()) {
            return Decision.refused(motor.tag() + (impound.in() ? " is handed in already" : " is not handed in"));
        }
        if (impound.in() && (life.stage().isLoaded() || life.stage().isOut())) {
            return Decision.refused(
                    motor.tag() + " is " + life.stage().word() + ": a motor is handed in unwound and whole");
        }
        MotorInspected known = InspectionStore.find(tx, motor.id()).orElse(null);
        var fact = new MotorInspected(
                motor.id(),
                known == null ? null : known.massG(),
                known == null ? null : known.massTyped(),
                (impound.in() ? MotorPlace.IN : MotorPlace.BACK).word(),
                context.now().toEpochMilli());
        return Decision.decided(TOPICS, Fact.of("motor.inspected", fact));
    }
}
