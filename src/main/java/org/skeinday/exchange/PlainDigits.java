package org.skeinday.exchange;

import java.math.BigDecimal;

/** Numbers whose digits nobody could write down: 1E999999999 would fill the memory with noughts. */
final class PlainDigits {
    /** Own default: more than any quantity has, with much to spare. */
    private static final int MOST = 60;

    private PlainDigits() {}

    /** Whether it takes more than 60 digits before and after the point. */
    static boolean areTooMany(BigDecimal number) {
        return number.precision() > MOST || Math.abs((long) number.scale()) > MOST;
    }
}
