package org.skeinday.units;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A time in the air, exact to the millisecond.
 *
 * @param millis zero or more
 */
public record FlightTime(long millis) implements Comparable<FlightTime> {
    private static final Pattern TYPED = Pattern.compile("(?:(\\d{1,4}):)?(\\d{1,5})(?:[.,](\\d{1,3}))?(?:\\s*s)?");

    public FlightTime {
        Preconditions.zeroOrMore("A time", millis, "ms");
    }

    /**
     * Reads what people type: {@code 1:23.45}, {@code 83.45}, {@code 83,45}.
     *
     * @throws Misread saying what is wrong and what would be right
     */
    public static FlightTime parse(String typed) {
        Matcher parts = TYPED.matcher(typed.strip());
        if (!parts.matches()) {
            throw new Misread(
                    "'" + typed + "' is not a time",
                    "write minutes:seconds or seconds with up to three decimals, for example 1:23.45 or 83.45");
        }
        long seconds = Long.parseLong(parts.group(2));
        if (parts.group(1) != null && (seconds > 59 || parts.group(2).length() != 2)) {
            throw new Misread(
                    "'" + typed + "' is not a time",
                    "after the colon come two digits of seconds, 00 to 59, for example 1:05.2");
        }
        long minutes = parts.group(1) == null ? 0 : Long.parseLong(parts.group(1));
        String decimals = parts.group(3) == null ? "" : parts.group(3);
        return new FlightTime((minutes * 60 + seconds) * 1000 + Long.parseLong((decimals + "000").substring(0, 3)));
    }

    /** As {@code m:ss.s} with at least {@code decimals} decimals, more when the time has more: nothing is hidden. */
    public String text(int decimals) {
        BigDecimal seconds = BigDecimal.valueOf(millis % 60_000, 3).stripTrailingZeros();
        BigDecimal shown = seconds.setScale(Math.max(decimals, Math.max(0, seconds.scale())), RoundingMode.UNNECESSARY);
        String text = shown.toPlainString();
        boolean oneDigit = shown.compareTo(BigDecimal.TEN) < 0;
        return millis / 60_000 + ":" + (oneDigit ? "0" : "") + text;
    }

    /** In seconds with just {@code decimals} decimals, or more when the time has more. */
    public String seconds(int decimals) {
        BigDecimal seconds = BigDecimal.valueOf(millis, 3).stripTrailingZeros();
        return seconds.setScale(Math.max(decimals, Math.max(0, seconds.scale())), RoundingMode.UNNECESSARY)
                .toPlainString();
    }

    @Override
    public int compareTo(FlightTime other) {
        return Long.compare(millis, other.millis);
    }
}
