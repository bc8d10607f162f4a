package org.skeinday.exchange;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Misread;

/** Numbers, times and days of a row's cells, within bounds, and the same as text that loses nothing. */
final class Numbers {
    private static final Pattern DECIMAL = Pattern.compile("-?(\\d{1,30}([.,]\\d{1,30})?|[.,]\\d{1,30})");

    private Numbers() {}

    /** A decimal number with point or comma within bounds; null for an empty cell. */
    static @Nullable Double decimal(Row row, String column, double least, double most) {
        return row.read(column, text -> {
            if (!DECIMAL.matcher(text).matches()) {
                throw new Misread("'" + text + "' is not a number", bounds(least, most));
            }
            double value = Double.parseDouble(text.replace(',', '.'));
            if (value < least || value > most) {
                throw new Misread("'" + text + "' is out of bounds", bounds(least, most));
            }
            return value;
        });
    }

    private static String bounds(double least, double most) {
        return "write a number from " + text(least) + " to " + text(most);
    }

    static double decimal(Row row, String column, double least, double most, double otherwise) {
        Double value = decimal(row, column, least, most);
        return value == null ? otherwise : value;
    }

    static @Nullable Integer whole(Row row, String column, int least, int most) {
        Double value = decimal(row, column, least, most);
        if (value != null && value != Math.rint(value)) {
            row.error(
                    column,
                    "'" + row.text(column) + "' is no whole number",
                    "write a whole number from " + least + " to " + most);
            return null;
        }
        return value == null ? null : (int) (double) value;
    }

    static int whole(Row row, String column, int least, int most, int otherwise) {
        Integer value = whole(row, column, least, most);
        return value == null ? otherwise : value;
    }

    /** A time in milliseconds within bounds; null for an empty cell. */
    static @Nullable Long time(Row row, String column, long leastMs, long mostMs) {
        return row.read(column, text -> {
            long ms = FlightTime.parse(text).millis();
            if (ms < leastMs || ms > mostMs) {
                throw new Misread(
                        "'" + text + "' is out of bounds",
                        "write a time from " + new FlightTime(leastMs).text(0) + " to "
                                + new FlightTime(mostMs).text(0));
            }
            return ms;
        });
    }

    static long time(Row row, String column, long leastMs, long mostMs, long otherwise) {
        Long value = time(row, column, leastMs, mostMs);
        return value == null ? otherwise : value;
    }

    static @Nullable LocalDate day(Row row, String column) {
        return row.read(column, text -> {
            try {
                return LocalDate.parse(Moments.withIsoDay(text));
            } catch (DateTimeException e) {
                throw new Misread(
                        "'" + text + "' is no day of the calendar", "write year-month-day, for example 2026-05-09");
            }
        });
    }

    /** Just the digits that give the same number back, never with an exponent. */
    static String text(double value) {
        BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
        return (exact.scale() < 0 ? exact.setScale(0) : exact).toPlainString();
    }

    static String text(@Nullable Number value) {
        return value == null ? "" : value instanceof Double d ? text((double) d) : value.toString();
    }

    static String time(@Nullable Long ms) {
        return ms == null ? "" : new FlightTime(ms).text(2);
    }
}
