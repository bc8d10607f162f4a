package org.skeinday.units;

import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a number and a unit as people type them: {@code 18.5in}, {@code 18 1/2"}, {@code 53,3 cm}. */
final class QuantityText {
    private static final Pattern TYPED =
            Pattern.compile("(\\d{1,7}(?:[.,]\\d{1,6})?|[.,]\\d{1,6})?(?:\\s*(\\d{1,3})/(\\d{1,3}))?\\s*(\\D*)");

    private QuantityText() {}

    /**
     * Reads {@code typed} by the first unit that fits.
     *
     * @param what the quantity's word for messages, for example "length"
     * @param defaultUnit used when the text names none; empty when it must
     * @param units by spelling, lower case, without spaces, hyphens and dots
     * @throws IllegalArgumentException saying what is wrong and what would be right
     */
    static <T> T parse(
            String what, String typed, String defaultUnit, Map<String, DoubleFunction<T>> units, String example) {
        Matcher parts = TYPED.matcher(typed.strip());
        if (!parts.matches() || (parts.group(1) == null && parts.group(2) == null)) {
            throw new IllegalArgumentException(
                    "'" + typed + "' is not a " + what + "; write a number and a unit, for example " + example);
        }
        String unit = parts.group(4).isBlank() ? defaultUnit : parts.group(4);
        if (unit.isBlank()) {
            throw new IllegalArgumentException("'" + typed + "' has no unit; write for example " + example);
        }
        DoubleFunction<T> make = units.get(spelling(unit));
        if (make == null) {
            throw new IllegalArgumentException(
                    "'" + typed + "' has the unknown unit '" + unit.strip() + "'; write for example " + example);
        }
        return make.apply(number(parts, typed));
    }

    private static double number(Matcher parts, String typed) {
        double whole =
                parts.group(1) == null ? 0 : Double.parseDouble(parts.group(1).replace(',', '.'));
        if (parts.group(2) == null) {
            return whole;
        }
        double below = Double.parseDouble(parts.group(3));
        if (below == 0) {
            throw new IllegalArgumentException("'" + typed + "' divides by zero; write for example 18 1/2 in");
        }
        return whole + Double.parseDouble(parts.group(2)) / below;
    }

    private static String spelling(String unit) {
        return unit.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s·.*\\-]", "");
    }
}
