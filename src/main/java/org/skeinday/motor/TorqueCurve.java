package org.skeinday.motor;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.skeinday.units.Torque;

/**
 * Torque over turns in the motor, from readings of one meter. Winding and unwinding are two different curves with a
 * steep drop between them, so each has its own type around this one: {@link WindingCurve}, {@link UnwindingCurve}.
 */
public final class TorqueCurve {
    private final MonotoneCurve curve;

    private TorqueCurve(MonotoneCurve curve) {
        this.curve = curve;
    }

    /** In any order; readings at the same turns are the swing of one needle and count as their mean. */
    public static TorqueCurve of(List<TorqueReading> readings) {
        Map<Double, Double> byTurns = readings.stream()
                .collect(Collectors.groupingBy(
                        TorqueReading::motorTurns,
                        TreeMap::new,
                        Collectors.averagingDouble(r -> r.torque().newtonMillimetres())));
        if (byTurns.size() < 2) {
            throw new IllegalArgumentException(
                    "A torque curve must have readings at 2 different turns at least, but had " + byTurns.size());
        }
        return new TorqueCurve(MonotoneCurve.through(array(byTurns.keySet()), array(byTurns.values())));
    }

    private static double[] array(java.util.Collection<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    public double firstMotorTurns() {
        return curve.first();
    }

    public double lastMotorTurns() {
        return curve.last();
    }

    public boolean covers(double motorTurns) {
        return curve.covers(motorTurns);
    }

    /**
     * The turns of the readings between two numbers of turns, with these at the ends, rising: from one to the next the
     * curve is one cubic that only rises or only falls.
     */
    public List<Double> pieces(double fromTurns, double toTurns) {
        var ends = new TreeSet<Double>(List.of(fromTurns, toTurns));
        ends.addAll(curve.pointsBetween(fromTurns, toTurns));
        return List.copyOf(ends);
    }

    /** @throws IllegalArgumentException outside the readings */
    public Torque at(double motorTurns) {
        return Torque.ofNewtonMillimetres(Math.max(0, curve.at(motorTurns)));
    }

    /** 2π∫T dN in millijoules, for T in N·mm and N in turns. */
    double workMillijoules(double fromTurns, double toTurns) {
        return 2 * Math.PI * curve.integral(fromTurns, toTurns);
    }
}
