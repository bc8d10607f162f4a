package org.skeinday.standing;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.skeinday.timing.RoundingBySize;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Preconditions;

/**
 * The mean of several tries without the best and the worst. A try without a time is worse than any with one.
 *
 * @param tries how many there are, 1 to 20
 * @param dropBest how many of the best do not count, zero or more
 * @param dropWorst how many of the worst do not count, zero or more; more tries without a time leave no score
 */
public record TrimmedMean(int tries, int dropBest, int dropWorst, Better better, RoundingBySize rounding) {
    /** WCA Regulations 9f8, 9f9: of five the best and the worst are dropped; one without a time is the worst, two leave no score. */
    public static final TrimmedMean OF_FIVE = new TrimmedMean(5, 1, 1, Better.SHORTER, RoundingBySize.AVERAGES);

    /**
     * A score with its reason.
     *
     * @param meanMs empty for no score
     */
    public record Mean(Optional<Long> meanMs, String how) {}

    public TrimmedMean {
        Preconditions.within("The number of tries", tries, 1, 20);
        if (dropBest < 0 || dropWorst < 0 || dropBest + dropWorst >= tries) {
            throw new IllegalArgumentException("Of " + tries + " tries one at least must count, but " + dropBest
                    + " and " + dropWorst + " are dropped");
        }
    }

    /** @param times in ms, one for each try, empty for a try without a time */
    public Mean of(List<Optional<Long>> times) {
        List<Long> timed = timed(times);
        int without = tries - timed.size();
        if (without > dropWorst) {
            return new Mean(Optional.empty(), without + " of " + tries + " tries are without a time: no score");
        }
        List<Long> counted = timed.subList(dropBest, tries - dropWorst);
        long mean = meanMs(sum(counted));
        List<Long> dropped = new ArrayList<>(timed.subList(0, dropBest));
        dropped.addAll(timed.subList(tries - dropWorst, timed.size()));
        String how = "Mean of " + list(counted) + "; dropped: " + list(dropped)
                + (without == 0 ? "" : (dropped.isEmpty() ? "" : ", ") + without + " without a time");
        return new Mean(Optional.of(mean), how + ": " + text(mean));
    }

    /** The sum of the tries that count, ms; empty for no score. */
    public Optional<Long> sumMs(List<Optional<Long>> times) {
        List<Long> timed = timed(times);
        return tries - timed.size() > dropWorst
                ? Optional.empty()
                : Optional.of(sum(timed.subList(dropBest, tries - dropWorst)));
    }

    /** The mean of the tries that count, rounded. @param sumMs theirs */
    public long meanMs(long sumMs) {
        return rounding.round(BigInteger.valueOf(sumMs), BigInteger.valueOf(tries - dropBest - dropWorst));
    }

    private List<Long> timed(List<Optional<Long>> times) {
        if (times.size() != tries) {
            throw new IllegalArgumentException("There must be " + tries + " tries, but there were " + times.size());
        }
        return times.stream().flatMap(Optional::stream).sorted(better.first()).toList();
    }

    private static long sum(List<Long> times) {
        return times.stream().reduce(0L, Math::addExact);
    }

    private static String list(List<Long> times) {
        return times.stream().map(TrimmedMean::text).collect(Collectors.joining(", "));
    }

    private static String text(long ms) {
        return new FlightTime(ms).text(2);
    }
}
