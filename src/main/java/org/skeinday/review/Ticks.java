package org.skeinday.review;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.skeinday.units.Preconditions;

/**
 * Round numbers along an axis: steps of 1, 2 or 5 times a power of ten.
 *
 * @param values rising, at least two; the first is not above the least value shown, the last not below the largest
 * @param labels as many, all with the same decimals
 */
public record Ticks(List<Double> values, List<String> labels) {
    /**
     * @param most so many steps at most, 2 or more
     * @throws IllegalArgumentException unless low and high are finite and low is not above high
     */
    public static Ticks over(double low, double high, int most) {
        return over(low, high, most, Integer.MIN_VALUE);
    }

    /** The same in steps of one or more, for counts. */
    public static Ticks ofWhole(double low, double high, int most) {
        return over(low, high, most, 0);
    }

    private static Ticks over(double low, double high, int most, int leastPower) {
        Preconditions.finite("The least value", low);
        Preconditions.finite("The largest value", high);
        if (low > high || most < 2) {
            throw new IllegalArgumentException("Ticks must go from low to high in 2 steps or more, but were " + low
                    + " to " + high + " in " + most);
        }
        if (high - low <= Math.abs(high) * 1e-9) { // all alike: they stand in the middle of something
            double around = Math.max(1, Math.abs(high)) / 4;
            return over(low - around, high + around, most, leastPower);
        }
        int power = Math.max(leastPower, (int) Math.floor(Math.log10((high - low) / most)));
        for (int i = 0; ; i++) {
            int factor = List.of(1, 2, 5).get(i % 3);
            BigDecimal step = BigDecimal.valueOf(factor).scaleByPowerOfTen(power + i / 3);
            BigDecimal first = multiple(low, step, RoundingMode.FLOOR);
            BigDecimal last = multiple(high, step, RoundingMode.CEILING);
            if (first.compareTo(last) == 0) {
                last = last.add(step);
            }
            if (last.subtract(first).divide(step).intValueExact() <= most) {
                return along(first, last, step);
            }
        }
    }

    private static BigDecimal multiple(double value, BigDecimal step, RoundingMode mode) {
        return new BigDecimal(value)
                .round(new java.math.MathContext(12)) // 0.30000000000000004 is 0.3
                .divide(step, 0, mode)
                .multiply(step);
    }

    private static Ticks along(BigDecimal first, BigDecimal last, BigDecimal step) {
        List<Double> values = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        int decimals = Math.max(0, step.stripTrailingZeros().scale());
        for (BigDecimal at = first; at.compareTo(last) <= 0; at = at.add(step)) {
            values.add(at.doubleValue());
            labels.add(at.setScale(decimals, RoundingMode.UNNECESSARY).toPlainString());
        }
        return new Ticks(values, labels);
    }

    double first() {
        return values.get(0);
    }

    double last() {
        return values.get(values.size() - 1);
    }
}
