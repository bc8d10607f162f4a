package org.skeinday.flight;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.skeinday.motor.TorqueCurve;
import org.skeinday.motor.UnwindingCurve;

/**
 * A motor that runs down on a model, up to where the descent begins. The shaft takes torque as the square of its speed,
 * as rotors at a fixed pitch do (constant torque coefficient: J. G. Leishman, Principles of Helicopter Aerodynamics,
 * §2.7), so that it turns with ω = rate·√(T/Q) at a torque T, Q and rate being those of hover; from n turns to d it takes
 * ∫ dn/ω. The descent begins where T has come down to Q. Nothing here knows of roof, climb or how long the descent takes.
 *
 * @param secondsToDescent 0 where the motor cannot hold the model up at all
 * @param turnsAtDescent turns still in the motor then
 * @param idealSeconds that the energy of the same turns would last in hover: 2π∫T dn / P, from the lowest reading
 * @param hovers false where the torque at the turns is below that of hover
 */
public record RunDown(double secondsToDescent, double turnsAtDescent, double idealSeconds, boolean hovers) {
    private static final int POINTS = 20;
    private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();
    private static final double CLOSE = 1e-12;
    private static final int HALVINGS = 12;
    private static final int BISECTIONS = 100;

    /**
     * @param curve torque over the turns still in the motor
     * @param turns in the motor at release
     * @throws IllegalArgumentException for turns beyond the readings
     */
    public static RunDown of(UnwindingCurve curve, Hover hover, double turns) {
        TorqueCurve torque = curve.curve();
        double needed = hover.torque().newtonMillimetres();
        boolean hovers = at(torque, turns) >= needed;
        double end = hovers ? descent(torque, needed, turns) : turns;
        double ideal = curve.energyMillijoules(torque.firstMotorTurns(), turns) / hover.powerMilliwatts();
        double seconds = integral(n -> Math.sqrt(needed / at(torque, n)), torque.pieces(end, turns));
        return new RunDown(seconds / hover.motorTurnsPerSecond(), end, ideal, hovers);
    }

    /** Of the ideal seconds those that are flown, 0 to 1; empty where the turns hold no energy. */
    public OptionalDouble shareUsed() {
        return idealSeconds > 0 ? OptionalDouble.of(secondsToDescent / idealSeconds) : OptionalDouble.empty();
    }

    private static double at(TorqueCurve torque, double turns) {
        return torque.at(turns).newtonMillimetres();
    }

    /** The largest turns from there down with the torque needed, else the lowest reading. */
    private static double descent(TorqueCurve torque, double needed, double turns) {
        List<Double> ends = torque.pieces(torque.firstMotorTurns(), turns);
        for (int i = ends.size() - 1; i > 0; i--) {
            if (at(torque, ends.get(i - 1)) <= needed) {
                return crossing(torque, needed, ends.get(i - 1), ends.get(i));
            }
        }
        return torque.firstMotorTurns();
    }

    /** Between two readings the curve only rises or only falls, so that there is one crossing. */
    private static double crossing(TorqueCurve torque, double needed, double below, double above) {
        double low = below;
        double high = above;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            if (at(torque, middle) <= needed) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Each piece is one smooth cubic: Gauss and Legendre's rule, on halves of it where that still tells a difference. */
    private static double integral(DoubleUnaryOperator f, List<Double> ends) {
        double sum = 0;
        for (int i = 1; i < ends.size(); i++) {
            sum += halved(f, ends.get(i - 1), ends.get(i), gauss(f, ends.get(i - 1), ends.get(i)), HALVINGS);
        }
        return sum;
    }

    private static double halved(DoubleUnaryOperator f, double from, double to, double whole, int more) {
        double middle = (from + to) / 2;
        double left = gauss(f, from, middle);
        double right = gauss(f, middle, to);
        if (more == 0 || Math.abs(left + right - whole) <= CLOSE * (left + right)) {
            return left + right;
        }
        return halved(f, from, middle, left, more - 1) + halved(f, middle, to, right, more - 1);
    }

    private static double gauss(DoubleUnaryOperator f, double from, double to) {
        return GAUSS.legendre(POINTS, from, to).integrate(f::applyAsDouble);
    }
}
