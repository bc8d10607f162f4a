package org.skeinday.attempt;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.skeinday.units.Preconditions;

/**
 * How long a part takes, in seconds.
 *
 * @param median half of them take no longer
 * @param careful nine of ten take no longer: the 90th percentile
 * @param rests on so many of one's own; 0 when it is the stated default
 */
public record Estimate(Part part, long median, long careful, int rests) {
    /** Below this one's own tell too little. */
    public static final int ENOUGH = 3;

    public Estimate {
        Preconditions.zeroOrMore("The median of " + part.word(), median, "s");
        if (careful < median) {
            throw new IllegalArgumentException("The 90th percentile of " + part.word()
                    + " must be no less than its median, but was " + careful + " s beside " + median + " s");
        }
    }

    /**
     * From own history: quantiles between order statistics (type 7 of Hyndman and Fan 1996, memory), to the next longer
     * second; the default of the part below three.
     *
     * @param seconds of earlier ones, 0 or more each, in any order
     */
    public static Estimate of(Part part, List<Long> seconds) {
        if (seconds.size() < ENOUGH) {
            return new Estimate(part, part.defaultSeconds(), part.defaultSeconds(), 0);
        }
        seconds.forEach(one -> Preconditions.zeroOrMore("A time of " + part.word(), one, "s"));
        List<Long> sorted = seconds.stream().sorted().toList();
        return new Estimate(part, quantile(sorted, 5), quantile(sorted, 9), sorted.size());
    }

    /** Of every part, from the steps of earlier attempts; a part whose steps were told at once is not counted. */
    public static Map<Part, Estimate> ofAttempts(List<StepTimes> attempts) {
        Map<Part, Estimate> estimates = new EnumMap<>(Part.class);
        for (Part part : Part.values()) {
            estimates.put(
                    part,
                    of(
                            part,
                            attempts.stream()
                                    .flatMapToLong(steps -> steps.tookSeconds(part).stream())
                                    .filter(part::isNoted)
                                    .boxed()
                                    .toList()));
        }
        return estimates;
    }

    /** In whole numbers, so that it rounds up only where it lies between two. */
    private static long quantile(List<Long> sorted, int tenths) {
        int at = (sorted.size() - 1) * tenths;
        long low = sorted.get(at / 10);
        long high = sorted.get(Math.min(sorted.size() - 1, at / 10 + 1));
        return low + ((high - low) * (at % 10) + 9) / 10;
    }
}
