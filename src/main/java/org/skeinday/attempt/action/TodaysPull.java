package org.skeinday.attempt.action;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.skeinday.hall.MountPull;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.Section;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.PlainNumber;

/** What the strongest of the motors at hand pulls on its mount, and what the mount is tested with. */
public final class TodaysPull {
    private TodaysPull() {}

    /** @param stretch in relaxed lengths */
    private record Pull(MotorAdded motor, double stretch, double newtons, double test) {}

    /** Empty without motors at hand, and above five times their length, where nothing is known of the pull. */
    private static Optional<Pull> strongest(Tx tx) {
        Map<String, Integer> uses = TodaysStretch.usesAhead(tx);
        return TodaysStretch.atHand(tx)
                .flatMap(motor -> of(motor, TodaysStretch.ratio(motor, uses)).stream())
                .max(Comparator.comparingDouble(Pull::newtons));
    }

    private static Optional<Pull> of(MotorAdded motor, double stretch) {
        var section = Section.of(Mass.ofGrams(motor.massG()), Length.ofMillimetres(motor.loopMm()));
        OptionalDouble pull = MountPull.newtons(section, stretch);
        OptionalDouble test = MountPull.testNewtons(section, stretch, MountPull.FACTOR);
        return pull.isPresent() && test.isPresent()
                ? Optional.of(new Pull(motor, stretch, pull.getAsDouble(), test.getAsDouble()))
                : Optional.empty();
    }

    /** Whole newtons, up, that the mount must have held today; empty when that is not known. */
    public static OptionalDouble testNewtons(Tx tx) {
        return strongest(tx).map(p -> OptionalDouble.of(p.test())).orElse(OptionalDouble.empty());
    }

    /** What this motor alone asks of the mount, whole newtons, up; empty when it is not known. */
    static OptionalDouble testNewtons(Tx tx, MotorAdded motor) {
        return of(motor, TodaysStretch.ratio(motor, TodaysStretch.usesAhead(tx)))
                .map(p -> OptionalDouble.of(p.test()))
                .orElse(OptionalDouble.empty());
    }

    public static Optional<String> words(Tx tx) {
        return strongest(tx)
                .map(p -> "Motor " + p.motor().tag() + " pulls most today, about " + Math.round(Math.ceil(p.newtons()))
                        + " N at " + PlainNumber.of(p.stretch())
                        + " times its length: test the mount with " + Math.round(p.test()) + " N or more.");
    }
}
