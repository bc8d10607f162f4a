package org.skeinday.timing;

import java.math.BigInteger;
import org.skeinday.units.Preconditions;

/**
 * One rounding for short times, another for long ones.
 *
 * @param stepMs step of times below {@code longMs}, 1 to 60,000 ms
 * @param longMs from here on a time is long, ms
 * @param longStepMs step of long times, 1 to 60,000 ms
 */
public record RoundingBySize(Rounding rounding, long stepMs, long longMs, Rounding longRounding, long longStepMs) {
    private static final long TEN_MINUTES = 600_000;

    /** WCA Regulations 9f1, 9f2: single results down to 0.01 s, from 10 min on to the nearest second, X.50 up. */
    public static final RoundingBySize SINGLES =
            new RoundingBySize(Rounding.DOWN, 10, TEN_MINUTES, Rounding.NEAREST, 1000);

    /** WCA Regulations 9f1, 9f2: averages to the nearest 0.01 s, from 10 min on to the nearest second, X.50 up. */
    public static final RoundingBySize AVERAGES =
            new RoundingBySize(Rounding.NEAREST, 10, TEN_MINUTES, Rounding.NEAREST, 1000);

    public RoundingBySize {
        Preconditions.within("A step", stepMs, 1, 60_000, "ms");
        Preconditions.within("A long time's step", longStepMs, 1, 60_000, "ms");
        Preconditions.zeroOrMore("The begin of a long time", longMs, "ms");
    }

    /** Rounds the fraction numerator / denominator, ms, zero or more; exact. */
    public long round(BigInteger numerator, BigInteger denominator) {
        boolean isLong = numerator.compareTo(denominator.multiply(BigInteger.valueOf(longMs))) >= 0;
        return (isLong ? longRounding : rounding).round(numerator, denominator, isLong ? longStepMs : stepMs);
    }

    public long round(long ms) {
        return round(BigInteger.valueOf(ms), BigInteger.ONE);
    }
}
