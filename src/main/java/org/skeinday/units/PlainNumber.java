package org.skeinday.units;

import java.math.BigDecimal;

/** A number as people write it: no exponent, no zeros after the point. */
public final class PlainNumber {
    private PlainNumber() {}

    /** What is not finite is said as it is. */
    public static String of(double value) {
        return Double.isFinite(value)
                ? BigDecimal.valueOf(value).stripTrailingZeros().toPlainString()
                : String.valueOf(value);
    }
}
