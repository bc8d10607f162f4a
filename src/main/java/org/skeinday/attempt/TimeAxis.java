package org.skeinday.attempt;

import java.util.List;
import java.util.stream.LongStream;

/**
 * An axis of flight times with round ticks, so that a row of dots can be read against it.
 *
 * @param fromMs where it begins, ms; a multiple of the step
 * @param toMs where it ends, ms; above {@code fromMs}
 * @param stepMs from tick to tick
 */
public record TimeAxis(long fromMs, long toMs, long stepMs) {
    /** What people count times in: seconds, tens of them, half minutes, minutes. */
    private static final long[] STEPS = {1_000, 2_000, 5_000, 10_000, 15_000, 30_000, 60_000, 120_000, 300_000, 600_000
    };

    private static final long LONGEST_STEP = STEPS[STEPS.length - 1];
    private static final int MOST_STEPS = 5;

    /** Over all of these times, at most five steps long; of none, over a minute. */
    public static TimeAxis over(List<Long> timesMs) {
        long low = timesMs.stream().mapToLong(Long::longValue).min().orElse(0);
        long high = timesMs.stream().mapToLong(Long::longValue).max().orElse(60_000);
        return LongStream.of(STEPS)
                .mapToObj(step -> around(low, high, step))
                .filter(axis -> axis.steps() <= MOST_STEPS)
                .findFirst()
                .orElseGet(() -> around(low, high, LONGEST_STEP));
    }

    private static TimeAxis around(long low, long high, long step) {
        long from = Math.floorDiv(low, step) * step;
        long to = -Math.floorDiv(-high, step) * step;
        return new TimeAxis(from, Math.max(to, from + step), step);
    }

    private long steps() {
        return (toMs - fromMs) / stepMs;
    }

    /** Where a time lies, 0 to 1. */
    public double share(long ms) {
        return (double) (ms - fromMs) / (toMs - fromMs);
    }

    /** The round times from begin to end, both with it. */
    public List<Long> ticksMs() {
        return LongStream.rangeClosed(0, steps())
                .mapToObj(i -> fromMs + i * stepMs)
                .toList();
    }
}
