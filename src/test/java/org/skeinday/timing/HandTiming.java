package org.skeinday.timing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.skeinday.units.FlightTime;

/**
 * Flights timed by hands: each press is off by a normal error of 0.07 s (Am. J. Phys. 87, 110), at release and again at
 * landing, each timekeeper by themselves. What all timekeepers see late together is not in it.
 */
final class HandTiming {
    static final double PRESS_MS = 70;

    /** SD of one watch: two presses. */
    static final double WATCH_MS = PRESS_MS * Math.sqrt(2);

    private static final long TRUE_MS = 60_000;

    /** A rule on so many watches. */
    enum Way {
        ONE("one watch", 1, Take.MIDDLE),
        MEAN_OF_TWO("mean of two", 2, Take.MEAN),
        LONGER_OF_TWO("longer of two", 2, Take.LONGER),
        MIDDLE_OF_THREE("middle of three", 3, Take.MIDDLE),
        MEAN_OF_THREE("mean of three", 3, Take.MEAN);

        final String words;
        final int watches;
        final TimeRule rule;

        Way(String words, int watches, Take take) {
            this.words = words;
            this.watches = watches;
            this.rule = new TimeRule(take, null, Rounding.NEAREST, 1, false);
        }
    }

    /**
     * What a way made of all flights.
     *
     * @param errorsMs official time less the true one
     * @param apart share of flights with watches more than the spread limit apart
     */
    record Outcome(long[] errorsMs, double apart) {
        double mean() {
            long sum = 0;
            for (long error : errorsMs) {
                sum += error;
            }
            return (double) sum / errorsMs.length;
        }

        double sd() {
            long squares = 0;
            for (long error : errorsMs) {
                squares += error * error;
            }
            return Math.sqrt((double) squares / errorsMs.length - mean() * mean());
        }
    }

    private HandTiming() {}

    static Map<Way, Outcome> fly(int flights, long seed) {
        Map<Way, Outcome> outcomes = new LinkedHashMap<>();
        for (Way way : Way.values()) {
            outcomes.put(way, fly(way, flights, new Random(seed)));
        }
        return outcomes;
    }

    private static Outcome fly(Way way, int flights, Random random) {
        long[] errors = new long[flights];
        int apart = 0;
        for (int i = 0; i < flights; i++) {
            List<WatchReading> readings = new ArrayList<>();
            for (int w = 1; w <= way.watches; w++) {
                readings.add(new WatchReading.Counted("" + w, new FlightTime(read(random))));
            }
            var watches = new Watches(readings);
            TimeDecision decision = watches.decide(WatchesRule.of(way.rule, way.watches));
            apart += decision instanceof TimeDecision.ForAPerson ? 1 : 0;
            errors[i] = watches.reduce(way.rule).millis() - TRUE_MS;
        }
        return new Outcome(errors, (double) apart / flights);
    }

    private static long read(Random random) {
        double started = PRESS_MS * random.nextGaussian();
        double stopped = PRESS_MS * random.nextGaussian();
        return TRUE_MS + Math.round(stopped - started);
    }
}
