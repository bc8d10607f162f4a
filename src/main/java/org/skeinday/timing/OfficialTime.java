package org.skeinday.timing;

import java.math.BigInteger;
import java.util.List;
import java.util.stream.Collectors;
import org.skeinday.units.FlightTime;

/**
 * The time that counts, and how it came about.
 *
 * @param millis whole milliseconds, a multiple of the rule's step
 * @param how a sentence with every reading
 */
public record OfficialTime(long millis, String how) {
    /** A time as an exact fraction of a millisecond: the mean of three watches need not be whole. */
    private record Exact(BigInteger numerator, BigInteger denominator, String words) {
        static Exact of(FlightTime time, String words) {
            return new Exact(BigInteger.valueOf(time.millis()), BigInteger.ONE, words);
        }
    }

    /**
     * Reduces the watches of one flight by the rule, exactly.
     *
     * @throws IllegalArgumentException without a watch, or when MIDDLE has an even number and the rule does not say
     */
    public static OfficialTime reduce(List<FlightTime> watches, TimeRule rule) {
        if (watches.isEmpty()) {
            throw new IllegalArgumentException("The watches must have one reading at least, but had none");
        }
        List<FlightTime> used = rule.roundWatchesFirst()
                ? watches.stream().map(w -> rounded(w, rule)).toList()
                : watches;
        Exact taken = taken(used, rule);
        long official = rule.rounding().round(taken.numerator(), taken.denominator(), rule.stepMs());
        String how = (watches.size() == 1 ? "Watch " : "Watches ") + list(watches, 2)
                + (rule.roundWatchesFirst() ? ", each rounded " + step(rule) + ": " + list(used, rule.decimals()) : "")
                + (watches.size() == 1 ? "" : "; " + taken.words())
                + "; rounded " + step(rule) + ": " + new FlightTime(official).text(rule.decimals());
        return new OfficialTime(official, how);
    }

    private static FlightTime rounded(FlightTime watch, TimeRule rule) {
        return new FlightTime(rule.rounding().round(BigInteger.valueOf(watch.millis()), BigInteger.ONE, rule.stepMs()));
    }

    private static String step(TimeRule rule) {
        return rule.rounding().words() + " " + new FlightTime(rule.stepMs()).seconds(rule.decimals()) + " s";
    }

    private static String list(List<FlightTime> times, int decimals) {
        return times.stream().map(t -> t.text(decimals)).collect(Collectors.joining(", "));
    }

    private static Exact taken(List<FlightTime> times, TimeRule rule) {
        List<FlightTime> sorted = times.stream().sorted().toList();
        return switch (takeOf(sorted.size(), rule)) {
            case MIDDLE -> named("middle", sorted.get(sorted.size() / 2));
            case LONGER -> named("longer", sorted.get(sorted.size() - 1));
            case SHORTER -> named("shorter", sorted.get(0));
            case MEAN -> mean(sorted);
        };
    }

    private static Take takeOf(int watches, TimeRule rule) {
        if (rule.take() != Take.MIDDLE || watches % 2 == 1) {
            return rule.take();
        }
        Take ifTwo = rule.ifTwo();
        if (watches != 2) {
            throw new IllegalArgumentException(
                    "The watches of which the middle is taken must be two or an odd number, but were " + watches);
        }
        if (ifTwo == null) {
            throw new IllegalArgumentException(
                    "What is taken of two watches must be said: longer, mean or shorter, but nothing was");
        }
        return ifTwo;
    }

    private static Exact named(String word, FlightTime time) {
        return Exact.of(time, word + " " + time.text(2));
    }

    private static Exact mean(List<FlightTime> times) {
        BigInteger sum =
                times.stream().map(t -> BigInteger.valueOf(t.millis())).reduce(BigInteger.ZERO, BigInteger::add);
        BigInteger count = BigInteger.valueOf(times.size());
        BigInteger[] parts = sum.divideAndRemainder(count);
        String words = new FlightTime(parts[0].longValueExact()).text(2);
        String more = parts[1].signum() == 0 ? "" : " and " + parts[1] + "/" + count + " ms";
        return new Exact(sum, count, "mean " + words + more);
    }
}
