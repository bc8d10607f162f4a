package org.skeinday.load;

import java.util.Arrays;
import java.util.Locale;
import org.HdrHistogram.ConcurrentHistogram;

/** Waiting times of one kind, in nanoseconds, counted from when each was due: a late start counts as waiting. */
final class Percentiles {
    private static final long MOST_NS = 600_000_000_000L;
    private static final int DIGITS = 3;

    private final ConcurrentHistogram waits = new ConcurrentHistogram(MOST_NS, DIGITS);

    void add(long nanos) {
        waits.recordValue(Math.min(Math.max(0, nanos), MOST_NS));
    }

    void clear() {
        waits.reset();
    }

    long count() {
        return waits.getTotalCount();
    }

    /** @param share 0 to 1; @return milliseconds, the smallest value that at least that share does not exceed */
    double ms(double share) {
        if (waits.getTotalCount() == 0) {
            throw new IllegalStateException("Nothing was measured");
        }
        return waits.getValueAtPercentile(share * 100) / 1e6;
    }

    double mostMs() {
        return waits.getMaxValue() / 1e6;
    }

    String text() {
        return String.format(
                Locale.ROOT, "p50 %6.1f ms  p95 %6.1f ms  p99 %6.1f ms  (%d)", ms(0.5), ms(0.95), ms(0.99), count());
    }

    /** How many times longer than {@code bare}, at the middle, 95 and 99 of 100. */
    String over(Percentiles bare) {
        return Arrays.stream(new double[] {0.5, 0.95, 0.99})
                .mapToObj(share -> String.format(Locale.ROOT, "p%.0f %.1f", share * 100, ms(share) / bare.ms(share)))
                .reduce((a, b) -> a + "  " + b)
                .orElseThrow();
    }
}
