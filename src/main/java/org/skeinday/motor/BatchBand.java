package org.skeinday.motor;

import java.util.List;
import java.util.Optional;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Torque;

/**
 * Torque curves of one batch on one meter, laid over each other: turns as N · m^0.5 / L0^1.5 (inches, grams), torque
 * divided by A^1.5 (empirical). All winding or all unwinding, never both.
 */
public final class BatchBand {
    /**
     * One motor's curve and its size.
     *
     * @param meterId the torque meter that it was read from
     * @param read how finely, in N·mm
     */
    public record MotorCurve(String meterId, TorqueCurve curve, Length loop, Mass mass, Resolution read) {
        /** Of torques without a meter: as exact as they stand. */
        public MotorCurve(String meterId, TorqueCurve curve, Length loop, Mass mass) {
            this(meterId, curve, loop, mass, Resolution.EXACT);
        }
    }

    /**
     * Torque of a motor of given size.
     *
     * @param low 10 % of the curves lie below it, {@code high} 90 %; at least as far from the median as the readings'
     *     resolution leaves
     * @param curves that reach there, at least one
     */
    public record Band(Torque low, Torque median, Torque high, int curves) {}

    private final List<MotorCurve> curves;

    private BatchBand(List<MotorCurve> curves) {
        this.curves = curves;
    }

    /** @throws IllegalArgumentException for curves of two meters: they are not pooled */
    public static BatchBand of(List<MotorCurve> curves) {
        List<String> meters =
                curves.stream().map(MotorCurve::meterId).distinct().toList();
        if (meters.size() > 1) {
            throw new IllegalArgumentException("A band must be of one meter, but was of " + String.join(", ", meters));
        }
        return new BatchBand(List.copyOf(curves));
    }

    /** Empty where no curve reaches: nothing is extrapolated. @param motorTurns zero or more: a wind begins at none */
    public Optional<Band> at(double motorTurns, Length loop, Mass mass) {
        double normalised = BreakingTurns.normalised(motorTurns, loop, mass);
        Section section = Section.of(mass, loop);
        double[] torques = curves.stream()
                .filter(c -> c.curve().covers(turns(normalised, c)))
                .mapToDouble(c -> section.scaled(c.curve().at(turns(normalised, c)), Section.of(c.mass(), c.loop()))
                        .newtonMillimetres())
                .toArray();
        if (torques.length == 0) {
            return Optional.empty();
        }
        Sample sample = Sample.of(torques);
        double median = sample.median();
        double least = floor(section);
        return Optional.of(new Band(
                Torque.ofNewtonMillimetres(Math.max(0, Math.min(sample.quantile(0.1), median - least))),
                Torque.ofNewtonMillimetres(median),
                Torque.ofNewtonMillimetres(Math.max(sample.quantile(0.9), median + least)),
                torques.length));
    }

    /** From the middle of a step to 10 and 90 % of what lies in it, by the curve that was read most coarsely, in N·mm. */
    private double floor(Section section) {
        return curves.stream()
                .mapToDouble(c -> section.scaled(
                                Torque.ofNewtonMillimetres(0.4 * c.read().step()), Section.of(c.mass(), c.loop()))
                        .newtonMillimetres())
                .max()
                .orElse(0);
    }

    private static double turns(double normalised, MotorCurve c) {
        return BreakingTurns.turns(normalised, c.loop(), c.mass());
    }
}
