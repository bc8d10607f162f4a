package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.MotorStage;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;
import org.skeinday.platform.record.Removed;
import org.skeinday.units.Torque;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.store.WindStore;

/** A motor that breaks while it is wound: its torque by the needle's last mark, its turns once they are counted. */
public final class BrokenMotor {
    private BrokenMotor() {}

    /** What a tap of the wind makes of the motor: broken, or after all not. It may come late, so it is never refused. */
    public static Optional<Fact> goes(Tx tx, ActContext context, Wind before, WindPhase tap) {
        return switch (tap.phase()) {
            case WindPhase.BROKE -> broke(tx, context, before.with(tap), tap.atMs());
            case WindPhase.AGAIN -> before.broke().isPresent() ? notBroken(tx, before) : Optional.empty();
            default -> Optional.empty();
        };
    }

    /** In the air it is on no meter, and has fewer turns than were wound: nobody measured anything of this break. */
    static List<Fact> seenAloft(Tx tx, ActContext context, String motor) {
        return alone(tx, context, motor, new MotorStep.Told("in the air", null, null, null));
    }

    /** A break that nobody read. */
    private static List<Fact> alone(Tx tx, ActContext context, String motor, MotorStep.Told told) {
        var by = new MotorStep.By(context.nextId(), context.now().toEpochMilli(), context.person(), context.device());
        return MotorLifeStore.find(tx, motor)
                .filter(life -> life.stage() != MotorStage.BROKEN)
                .map(life -> Fact.of("motor.step", life.step(MotorDeed.BREAK, by, null, told)))
                .stream()
                .toList();
    }

    /** The same as somebody saw it who has no reader's key. @param present its wind, empty where nobody reads it */
    static List<Fact> seen(Tx tx, ActContext context, String motor, Optional<Wind> present) {
        long atMs = context.now().toEpochMilli();
        Optional<Wind> wind = present.filter(w -> w.broke().isEmpty())
                .flatMap(w -> WindStore.find(tx, w.begun().id()));
        if (wind.isEmpty()) {
            return alone(tx, context, motor, MotorStep.Told.NOTHING);
        }
        WindPhase tap = tap(context, wind.get(), WindPhase.BROKE, atMs);
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("wind.phase", tap)));
        goes(tx, context, wind.get(), tap).ifPresent(facts::add);
        return facts;
    }

    /** It did not break after all: the reader's wind goes on, and the motor stands where it stood. */
    static List<Fact> takenBack(Tx tx, ActContext context, String motor, Optional<Wind> present) {
        long atMs = context.now().toEpochMilli();
        List<Fact> facts = new ArrayList<>();
        present.filter(w -> w.broke().isPresent()).ifPresent(w -> facts.add(again(context, w, atMs)));
        breaks(tx, motor).forEach(step -> facts.add(Fact.of("motor.step.undone", new Removed(step.id()))));
        return facts;
    }

    /** The same whenever it is found: the wind that said so is whole, too. */
    public static List<Fact> wholeAfterAll(Tx tx, ActContext context, String motor) {
        List<MotorStep> breaks = breaks(tx, motor);
        Optional<Wind> saidSo = WindStore.ofMotor(tx, motor).stream()
                .filter(wind -> wind.broke().isPresent())
                .reduce((earlier, later) -> later)
                .filter(wind -> breaks.containsAll(breaksSince(tx, wind).toList()));
        return takenBack(tx, context, motor, saidSo);
    }

    /** The last step of a motor is taken back on the Bench: a break goes out of the wind that said so, too. */
    public static List<Fact> undone(Tx tx, ActContext context, String last) {
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("motor.step.undone", new Removed(last))));
        MotorLifeStore.step(tx, last)
                .filter(step -> step.deed().equals(MotorDeed.BREAK.word()))
                .flatMap(step -> WindStore.ofMotor(tx, step.motorId()).stream()
                        .filter(wind -> wind.broke().isPresent())
                        .reduce((earlier, later) -> later)
                        .filter(wind -> onlyBreak(tx, wind, step)))
                .ifPresent(wind -> facts.add(again(context, wind, context.now().toEpochMilli())));
        return facts;
    }

    /** Of records in which several breaks were written one upon the other, the wind stays broken until the first is gone. */
    private static boolean onlyBreak(Tx tx, Wind wind, MotorStep step) {
        return breaksSince(tx, wind).map(MotorStep::id).toList().equals(List.of(step.id()));
    }

    /** The wind goes on, as its reader's key would say it. */
    static Fact again(ActContext context, Wind wind, long atMs) {
        return Fact.of("wind.phase", tap(context, wind, WindPhase.AGAIN, atMs));
    }

    /** A motor that hung off the meter hangs on it again; empty for one that never left. */
    static Optional<WindPhase> backOn(ActContext context, Wind wind, long atMs) {
        return wind.phase() == Wind.Phase.OFF_METER
                ? Optional.of(tap(context, wind, WindPhase.BACK_ON, atMs))
                : Optional.empty();
    }

    /** The break that stands, and those of records in which several were written one upon the other; the last first. */
    private static List<MotorStep> breaks(Tx tx, String motor) {
        Map<String, MotorStep> steps =
                MotorLifeStore.stepsOf(tx, motor).stream().collect(Collectors.toMap(MotorStep::id, step -> step));
        List<MotorStep> breaks = new ArrayList<>();
        @Nullable
        MotorStep step = MotorLifeStore.find(tx, motor).map(MotorLife::step).orElse(null);
        while (step != null && step.deed().equals(MotorDeed.BREAK.word())) {
            breaks.add(step);
            step = step.beforeId() == null ? null : steps.get(step.beforeId());
        }
        return breaks;
    }

    /** After all that was tapped before it, however the clocks stand. */
    private static WindPhase tap(ActContext context, Wind wind, String phase, long atMs) {
        long last = wind.phases().stream().mapToLong(WindPhase::elapsedMs).max().orElse(-1);
        long elapsedMs = Math.max(last + 1, atMs - wind.begun().atMs());
        return new WindPhase(context.nextId(), wind.begun().id(), phase, elapsedMs, atMs);
    }

    /** What the marks came to, as files carry it. */
    public static String typed(Torque torque) {
        return String.format(Locale.ROOT, "%.3f in-ozf", torque.inchOunces());
    }

    private static Optional<Fact> broke(Tx tx, ActContext context, Wind wind, long atMs) {
        var by = new MotorStep.By(context.nextId(), atMs, context.person(), context.device());
        return MotorLifeStore.find(tx, wind.begun().motorId())
                .filter(life -> life.stage() != MotorStage.BROKEN)
                .map(life -> Fact.of("motor.step", told(broken(life, by), wind)));
    }

    private static MotorStep broken(MotorLife life, MotorStep.By by) {
        return life.step(MotorDeed.BREAK, by, null, MotorStep.Told.NOTHING);
    }

    private static MotorStep told(MotorStep step, Wind wind) {
        @Nullable Torque torque = wind.breakTorque().orElse(null);
        return step.brokeAt(
                wind.turns().atBreak().orElse(null),
                torque == null ? null : torque.newtonMillimetres(),
                torque == null ? null : typed(torque),
                wind.begun().meter());
    }

    /** Only while nothing else was done to what is left of it. */
    public static Optional<Fact> notBroken(Tx tx, Wind wind) {
        return step(tx, wind)
                .filter(step -> MotorLifeStore.stands(tx, step.id()))
                .map(step -> Fact.of("motor.step.undone", new Removed(step.id())));
    }

    /** Its turns beside its torque, in the step that says so; empty when somebody took that step back. */
    public static Optional<Fact> counted(Tx tx, Wind wind) {
        return step(tx, wind).map(step -> Fact.of("motor.step.told", told(step, wind)));
    }

    private static Optional<MotorStep> step(Tx tx, Wind wind) {
        return breaksSince(tx, wind).findFirst();
    }

    /** Since that wind was begun, the last first. */
    private static Stream<MotorStep> breaksSince(Tx tx, Wind wind) {
        return MotorLifeStore.stepsOf(tx, wind.begun().motorId()).stream()
                .filter(s -> s.deed().equals(MotorDeed.BREAK.word())
                        && s.atMs() >= wind.begun().atMs());
    }
}
