package org.skeinday.winding;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Crank turns over time: straight between the moments at which they are known, level after the last. */
record TurnLine(TreeMap<Double, Double> turnsByMs, boolean estimated) {
    /** An estimate goes on to here and no further: more than a tenth above the target is no plan. */
    static final double MOST_OVER_TARGET = 1.1;

    /** From the counts, where they and the moment of the stop are known; else from the plan; else nothing. */
    static Optional<TurnLine> of(WindBegun begun, WindTimes times, @Nullable WindCounted counted) {
        @Nullable Long stop = times.stopped();
        return counted != null && stop != null ? Optional.of(entered(counted, times, stop)) : planned(begun, times);
    }

    private static TurnLine entered(WindCounted counted, WindTimes times, long stop) {
        TreeMap<Double, Double> line = begun();
        @Nullable Long in = times.steppedIn();
        if (in != null && counted.atFullCrankTurns() != null && in < stop) {
            line.put((double) in, (double) counted.atFullCrankTurns());
        }
        line.put((double) stop, (double) counted.stopCrankTurns());
        if (counted.backOffCrankTurns() != null) {
            takeOff(line, times, counted.backOffCrankTurns());
        }
        return new TurnLine(line, false);
    }

    private static Optional<TurnLine> planned(WindBegun begun, WindTimes times) {
        @Nullable Long in = times.steppedIn();
        @Nullable Integer atFull = begun.atFullCrankTurns();
        if (in == null || in == 0 || atFull == null || atFull == 0) {
            return Optional.empty();
        }
        @Nullable Long stop = times.stopped();
        double end = stop == null ? WindMark.MOST_ELAPSED_MS : stop;
        @Nullable Integer target = begun.targetCrankTurns();
        double most = target == null ? Double.MAX_VALUE : target * MOST_OVER_TARGET;
        double turns = Math.min(atFull * end / in, most);
        TreeMap<Double, Double> line = begun();
        line.put(turns * in / atFull, turns);
        line.put(end, turns);
        takeOff(line, times, begun.backOffCrankTurns());
        return Optional.of(new TurnLine(line, true));
    }

    private static TreeMap<Double, Double> begun() {
        TreeMap<Double, Double> line = new TreeMap<>();
        line.put(0.0, 0.0);
        return line;
    }

    private static void takeOff(TreeMap<Double, Double> line, WindTimes times, double backOff) {
        @Nullable Long off = times.backedOff();
        @Nullable Long stop = times.stopped();
        if (off != null && stop != null) {
            // the last reading of the wind keeps its turns, even when both were tapped at once
            double from = Math.nextUp(Math.max(stop, line.lastKey()));
            line.put(Math.max(from, off), Math.max(0, line.lastEntry().getValue() - backOff));
        }
    }

    Count at(double elapsedMs) {
        Map.@Nullable Entry<Double, Double> before = turnsByMs.floorEntry(elapsedMs);
        Map.@Nullable Entry<Double, Double> after = turnsByMs.ceilingEntry(elapsedMs);
        if (before == null || after == null || before.getKey().equals(after.getKey())) {
            return new Count(before == null ? 0 : before.getValue(), estimated);
        }
        double share = (elapsedMs - before.getKey()) / (after.getKey() - before.getKey());
        return new Count(before.getValue() + share * (after.getValue() - before.getValue()), estimated);
    }
}
