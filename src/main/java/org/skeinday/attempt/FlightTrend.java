package org.skeinday.attempt;

import java.util.List;
import org.skeinday.motor.Interval;
import org.skeinday.motor.Resolution;
import org.skeinday.motor.StraightLine;
import org.skeinday.units.FlightTime;

/**
 * Whether flight time goes up or down with something that was measured or set, such as launch torque in N·mm or turns:
 * the straight line of least squares through the valid flights. It says what went together, never what caused it.
 */
public sealed interface FlightTrend {
    /** Flights below which nothing is said. */
    int FEWEST_FLIGHTS = 3;

    /** How sure it must be that the slope is not zero: of a hundred things that do not matter, one may seem to. */
    double SURE = 0.99;

    /** A flight that counts. @param measured in its own unit, finite */
    record Point(double measured, FlightTime time) {}

    /**
     * @param secondsPerUnit slope
     * @param interval of the slope, in the confidence asked for
     */
    record Shown(double secondsPerUnit, Interval interval, int flights) implements FlightTrend {}

    record NoEvidence(String reason) implements FlightTrend {}

    /**
     * @param confidence of the interval that is shown; whether it is shown at all is decided by {@link #SURE}
     */
    static FlightTrend of(List<Point> flights, double confidence) {
        if (flights.size() < FEWEST_FLIGHTS) {
            return new NoEvidence("no evidence yet: it needs 3 valid flights, so far " + flights.size());
        }
        if (flights.stream().mapToDouble(Point::measured).distinct().count() < 2) {
            return new NoEvidence("no evidence yet: it was the same on all " + flights.size() + " valid flights");
        }
        double[] times =
                flights.stream().mapToDouble(f -> f.time().millis() / 1000.0).toArray();
        StraightLine line = StraightLine.through(
                        flights.stream().mapToDouble(Point::measured).toArray(), times)
                .readIn(Resolution.EXACT, Resolution.ofDigits(times));
        return line.slopeInterval(SURE).holds(0)
                ? new NoEvidence("no evidence yet from " + flights.size() + " valid flights")
                : new Shown(line.slope(), line.slopeInterval(confidence), flights.size());
    }
}
