package org.skeinday.attempt;

import java.util.List;
import org.skeinday.motor.Interval;
import org.skeinday.motor.Resolution;
import org.skeinday.motor.Sample;
import org.skeinday.units.FlightTime;

/** How long the next flight may last; never from fewer than three valid flights, always with an interval. */
public sealed interface FlightForecast {
    int FEWEST_FLIGHTS = 3;

    /**
     * A flown flight that counts.
     *
     * @param use of its motor, from 1
     */
    record Flown(FlightTime time, int use) {}

    /**
     * @param seconds expected
     * @param interval where one further flight will lie, in seconds, by Student's t; its low end not below zero
     * @param basis which flights, in words
     */
    record Expected(double seconds, Interval interval, int flights, String basis) implements FlightForecast {}

    record NotKnown(String reason) implements FlightForecast {}

    /** From the flights on the same use when they are enough, else from all of them. */
    static FlightForecast of(List<Flown> flown, int use, double confidence) {
        List<Flown> sameUse = flown.stream().filter(f -> f.use() == use).toList();
        if (sameUse.size() >= FEWEST_FLIGHTS) {
            return expected(sameUse, "flights on use " + use, confidence);
        }
        if (flown.size() >= FEWEST_FLIGHTS) {
            return expected(flown, "flights on any use", confidence);
        }
        return new NotKnown("a forecast needs 3 valid flights, so far " + flown.size());
    }

    private static Expected expected(List<Flown> flights, String basis, double confidence) {
        double[] times =
                flights.stream().mapToDouble(f -> f.time().millis() / 1000.0).toArray();
        Sample seconds = Sample.of(times).readIn(Resolution.ofDigits(times));
        Interval open = seconds.predictionInterval(confidence);
        Interval interval = new Interval(Math.max(0, open.low()), open.high(), confidence);
        return new Expected(seconds.mean(), interval, flights.size(), basis);
    }
}
