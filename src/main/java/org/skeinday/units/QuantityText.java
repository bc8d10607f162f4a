package org.skeinday.units;

import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a number and a unit as people type them: {@code 18.5in}, {@code 18 1/2"}, {@code 53,3 cm}, {@code 18½ in}. */
final class QuantityText {
    private static final Pattern TYPED = Pattern.compile(
            "(?:(?:(?<whole>\\d{1,7})[ -])?(?<above>\\d{1,3})/(?<below>\\d{1,3})|(?<plain>\\d{1,7}(?:[.,]\\d{1,18})?|[.,]\\d{1,18}))"
                    + " ?(?<unit>[^\\d.,/][^\\d/]*)?");
    private static final Pattern SPACES = Pattern.compile("[\\s\\u00a0\\u2007\\u2009\\u202f]+");
    private static final Pattern BLANKS = Pattern.compile(" {2,}");
    private static final Pattern INCH_MARKS = Pattern.compile("[”“″]|''|′′");
    private static final Pattern FOOT_MARKS = Pattern.compile("[’′]");
    private static final Pattern BETWEEN = Pattern.compile("[\\s·⋅∙×.*\\-‑–]");
    private static final Map<String, String> FRACTIONS = Map.of("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8");

    private QuantityText() {}

    /**
     * What can be typed for one quantity.
     *
     * @param word the quantity's word for messages, for example "length"
     * @param units by spelling, lower case, without spaces, hyphens and dots
     * @param known the units as a reader would write them, for messages
     * @param most the largest value that makes sense here, in {@code mostUnit}: beyond it a slip of the keys is likelier
     */
    record Kind<T extends Comparable<T>>(
            String word,
            Map<String, DoubleFunction<T>> units,
            String known,
            String example,
            T most,
            String mostWords) {}

    /**
     * Reads {@code typed}; where it names no unit, {@code defaultUnit} holds unless that is empty.
     *
     * @throws Misread saying what is wrong and what would be right
     */
    static <T extends Comparable<T>> T parse(Kind<T> kind, String typed, String defaultUnit) {
        Matcher parts = TYPED.matcher(plain(typed));
        if (!parts.matches()) {
            throw notThis(kind, typed);
        }
        String unit = parts.group("unit") == null ? defaultUnit : parts.group("unit");
        if (unit.isBlank()) {
            throw new Misread("'" + typed + "' has no unit", "write for example " + kind.example());
        }
        T value = known(kind, "'" + typed + "'", unit).apply(number(parts, typed));
        if (value.compareTo(kind.most()) > 0) {
            throw new Misread(
                    "'" + typed + "' is too much for a " + kind.word() + " here", "at most " + kind.mostWords());
        }
        return value;
    }

    /**
     * How a number in {@code unit} becomes a quantity.
     *
     * @param what has that unit, to begin the refusal with
     * @throws Misread for a unit in which this quantity is not typed
     */
    static <T extends Comparable<T>> DoubleFunction<T> known(Kind<T> kind, String what, String unit) {
        DoubleFunction<T> make = isMega(unit) ? null : kind.units().get(spelling(unit));
        if (make == null) {
            throw new Misread(
                    what + " has the unknown unit '" + unit.strip() + "'",
                    "known are " + kind.known() + ": write for example " + kind.example());
        }
        return make;
    }

    private static Misread notThis(Kind<?> kind, String typed) {
        String example = ", for example " + kind.example();
        return plain(typed).startsWith("-")
                ? new Misread("'" + typed + "' is below zero", "a " + kind.word() + " is zero or more" + example)
                : new Misread("'" + typed + "' is not a " + kind.word(), "write a number and a unit" + example);
    }

    /** One kind of space, of inch mark and of fraction, whatever the keyboard made of them. */
    private static String plain(String typed) {
        String text = SPACES.matcher(typed).replaceAll(" ").strip();
        for (var fraction : FRACTIONS.entrySet()) {
            text = text.replace(fraction.getKey(), fraction.getValue());
        }
        String parted = BLANKS.matcher(text).replaceAll(" ").strip();
        return FOOT_MARKS.matcher(INCH_MARKS.matcher(parted).replaceAll("\"")).replaceAll("'");
    }

    private static double number(Matcher parts, String typed) {
        String plain = parts.group("plain");
        if (plain != null) {
            return Double.parseDouble(plain.replace(',', '.'));
        }
        double whole = parts.group("whole") == null ? 0 : Double.parseDouble(parts.group("whole"));
        double below = Double.parseDouble(parts.group("below"));
        if (below == 0) {
            throw new Misread("'" + typed + "' divides by zero", "write for example 18 1/2 in");
        }
        return whole + Double.parseDouble(parts.group("above")) / below;
    }

    /** A capital M before small letters is mega, a million million times milli; all capitals are a caps lock key. */
    private static boolean isMega(String unit) {
        String letters = unit.strip();
        return letters.startsWith("M") && !letters.equals(letters.toUpperCase(Locale.ROOT));
    }

    private static String spelling(String unit) {
        return BETWEEN.matcher(unit.strip().toLowerCase(Locale.ROOT)).replaceAll("");
    }
}
