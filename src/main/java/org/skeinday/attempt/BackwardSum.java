package org.skeinday.attempt;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * How late winding may begin, and what is left of the window after an attempt: sums back from its end, with no plan and no
 * solver. Each part counts at its 90th percentile.
 *
 * @param estimates the part's default where one is missing
 * @param landingInside whether the landing, too, must lie inside the window
 */
public record BackwardSum(Map<Part, Estimate> estimates, boolean landingInside) {
    private static final long MS = 1000;

    public BackwardSum {
        estimates = Map.copyOf(estimates);
    }

    /** From the first crank turn to what must happen inside the window, ms. */
    public long windingToInsideMs() {
        return ms(Part.WIND) + ms(Part.LOAD) + (landingInside ? ms(Part.FLY) : 0);
    }

    /** The last moment to begin winding, epoch ms. */
    public long latestWindingMs(long closesMs) {
        return closesMs - windingToInsideMs();
    }

    /**
     * What is left of the window when this attempt is run back, ms, not less than 0: it goes on at once, and winds when the
     * window is open.
     *
     * @param opensMs epoch ms
     * @param closesMs epoch ms
     * @param running the part that it is in; null before the call
     * @param sinceMs when that part began, epoch ms
     */
    public long leftAfterMs(long nowMs, long opensMs, long closesMs, @Nullable Part running, long sinceMs) {
        long at = nowMs;
        for (Part part : Part.values()) {
            if (running == null || part.compareTo(running) >= 0) {
                long from =
                        part == running ? sinceMs : part == Part.WIND || part == Part.FLY ? Math.max(at, opensMs) : at;
                at = Math.max(at, from + ms(part));
            }
        }
        return Math.max(0, closesMs - at);
    }

    /** How many attempts more are inside within so much time. */
    public int fit(long leftMs) {
        long toInside = ms(Part.PREPARE) + windingToInsideMs();
        if (leftMs < toInside) {
            return 0;
        }
        long whole = Stream.of(Part.values()).mapToLong(this::ms).sum();
        return (int) (1 + (leftMs - toInside) / Math.max(1, whole));
    }

    /** What the sum rests on, in words. */
    public String basis() {
        List<Part> summed = landingInside ? List.of(Part.WIND, Part.LOAD, Part.FLY) : List.of(Part.WIND, Part.LOAD);
        OptionalLong fewest = summed.stream().mapToLong(p -> of(p).rests()).min();
        String parts = String.join(
                ", ", summed.stream().map(p -> p.word() + " " + minutes(ms(p))).toList());
        return fewest.orElse(0) == 0
                ? parts + " (stated, until " + Estimate.ENOUGH + " of your own were noted)"
                : parts + " (nine of ten of your own took no longer)";
    }

    private static String minutes(long ms) {
        return ms / 60_000 + ":" + String.format("%02d", ms / 1000 % 60);
    }

    private long ms(Part part) {
        return of(part).careful() * MS;
    }

    private Estimate of(Part part) {
        return estimates.getOrDefault(part, Estimate.of(part, List.of()));
    }
}
