package org.skeinday.winding;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BatchBand;
import org.skeinday.motor.Hold;
import org.skeinday.motor.HoldBleed;
import org.skeinday.motor.LaunchTorque;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.TorqueCurve;
import org.skeinday.motor.TorqueReading;
import org.skeinday.motor.UnwindingCurve;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;

/**
 * What the earlier winds of a batch say of the next: on one meter, of counted winds, those to a metronome left out.
 *
 * @param winds counted
 */
public record BatchWinds(List<Wind> winds, Map<String, Size> sizes) {
    /** Fewer winds make no band (common practice). */
    public static final int FEWEST_WINDS = 3;

    /** How long and how heavy a motor is. */
    public record Size(Length loop, Mass mass) {
        public static Size of(MotorAdded motor) {
            return new Size(Length.ofMillimetres(motor.loopMm()), Mass.ofGrams(motor.massG()));
        }
    }

    /** Those that may be compared with {@code wind}: read from the same meter, counted, not paced, not itself. */
    public static BatchWinds before(Wind wind, List<Wind> ofBatch, Map<String, Size> sizes) {
        return of(
                ofBatch.stream()
                        .filter(w -> !w.begun().id().equals(wind.begun().id()))
                        .toList(),
                sizes,
                wind.begun().meter());
    }

    /** @param meter null when none is read: then nothing can be said */
    public static BatchWinds of(List<Wind> ofBatch, Map<String, Size> sizes, @Nullable String meter) {
        return new BatchWinds(
                ofBatch.stream()
                        .filter(w -> meter != null && meter.equals(w.begun().meter()))
                        .filter(w -> w.counts().isYes())
                        .filter(w -> sizes.containsKey(w.begun().motorId()))
                        .toList(),
                sizes);
    }

    /** Torque while winding of a motor of this size, by motor turns; empty before three winds. */
    public Optional<DoubleFunction<Optional<BatchBand.Band>>> winding(Size motor) {
        List<BatchBand.MotorCurve> curves = curves(Wind::windingReadings);
        if (curves.size() < FEWEST_WINDS) {
            return Optional.empty();
        }
        BatchBand band = BatchBand.of(curves);
        return Optional.of(turns -> band.at(turns, motor.loop(), motor.mass()));
    }

    /** What the motor will give at launch, from unwinding readings only. @param motorTurns above 0 */
    public LaunchTorque launch(Size motor, double motorTurns) {
        List<LaunchTorque.Unwound> unwound = new ArrayList<>();
        for (BatchBand.MotorCurve c : curves(Wind::unwindingReadings)) {
            unwound.add(
                    new LaunchTorque.Unwound(c.meterId(), new UnwindingCurve(c.curve()), c.loop(), c.mass(), c.read()));
        }
        return LaunchTorque.of(unwound, motorTurns, motor.loop(), motor.mass());
    }

    /** How torque bleeds in a hold, from those that were read long enough. */
    public HoldBleed bleed() {
        return new HoldBleed(winds.stream().flatMap(w -> hold(w).stream()).toList());
    }

    private static Optional<Hold> hold(Wind wind) {
        try {
            return Optional.of(Hold.of(wind.holdReadings()));
        } catch (IllegalArgumentException e) { // too few readings later than 5 s: such a hold says nothing
            return Optional.empty();
        }
    }

    private List<BatchBand.MotorCurve> curves(Function<Wind, List<TorqueReading>> readings) {
        return winds.stream().flatMap(w -> curve(w, readings.apply(w))).toList();
    }

    private Stream<BatchBand.MotorCurve> curve(Wind wind, List<TorqueReading> readings) {
        boolean two =
                readings.stream().map(TorqueReading::motorTurns).distinct().count() >= 2;
        if (!two) {
            return Stream.empty();
        }
        Size size = Objects.requireNonNull(sizes.get(wind.begun().motorId()));
        String meter = Objects.requireNonNull(wind.begun().meter());
        return Stream.of(
                new BatchBand.MotorCurve(meter, TorqueCurve.of(readings), size.loop(), size.mass(), wind.read()));
    }
}
