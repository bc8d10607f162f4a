package org.skeinday.load;

import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.ConcurrentLinkedQueue;

/** Waiting times of one kind, in nanoseconds, counted from when each was due: a late start counts as waiting. */
final class Percentiles {
    private final ConcurrentLinkedQueue<Long> waits = new ConcurrentLinkedQueue<>();

    void add(long nanos) {
        waits.add(nanos);
    }

    void clear() {
        waits.clear();
    }

    int count() {
        return waits.size();
    }

    /** @param share 0 to 1; @return milliseconds, the smallest value that at least that share does not exceed */
    double ms(double share) {
        long[] sorted = waits.stream().mapToLong(Long::longValue).sorted().toArray();
        if (sorted.length == 0) {
            throw new IllegalStateException("Nothing was measured");
        }
        int rank = (int) Math.ceil(share * sorted.length) - 1;
        return sorted[Math.max(0, rank)] / 1e6;
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
