package org.skeinday.units;

import java.util.Collection;
import org.jspecify.annotations.Nullable;

/**
 * What values ask of their parts when they are made. A refusal says what must hold and what it was: {@code Loop length must
 * be above 0, but was -3 mm}. Nothing is ever repaired. What a form says beside a field
 * is another kind of sentence: it tells a person what to do next ("Name what was measured, or empty its row").
 */
public final class Preconditions {
    private Preconditions() {}

    /** @throws IllegalArgumentException for infinities and NaN */
    public static double finite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw refused(what, "be a finite number", String.valueOf(value));
        }
        return value;
    }

    /** @throws IllegalArgumentException unless {@code value} is finite and greater than {@code least} */
    public static double above(String what, double value, double least) {
        return above(what, value, least, "");
    }

    /** @param unit to say after the number; empty for a plain number */
    public static double above(String what, double value, double least, String unit) {
        if (!Double.isFinite(value) || value <= least) {
            throw refused(what, "be above " + PlainNumber.of(least), inUnit(PlainNumber.of(value), unit));
        }
        return value;
    }

    /** @throws IllegalArgumentException unless {@code value} is finite and above 0 */
    public static double positive(String what, double value) {
        return above(what, value, 0);
    }

    /** @throws IllegalArgumentException unless {@code value} is finite and not below 0 */
    public static double zeroOrMore(String what, double value) {
        return zeroOrMore(what, value, "");
    }

    /** @param unit to say after the number; empty for a plain number */
    public static double zeroOrMore(String what, double value, String unit) {
        if (!Double.isFinite(value) || value < 0) {
            throw refused(what, "be 0 or more", inUnit(PlainNumber.of(value), unit));
        }
        return value;
    }

    /** Both ends are allowed. @throws IllegalArgumentException outside them, and for NaN */
    public static double within(String what, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw refused(what, "be " + PlainNumber.of(least) + " to " + PlainNumber.of(most), PlainNumber.of(value));
        }
        return value;
    }

    /** The same for whole numbers. */
    public static long within(String what, long value, long least, long most) {
        return within(what, value, least, most, "");
    }

    /** The same. @param unit to say after the numbers; empty for plain numbers */
    public static long within(String what, long value, long least, long most, String unit) {
        if (value < least || value > most) {
            throw refused(
                    what,
                    "be " + least + " to " + inUnit(String.valueOf(most), unit),
                    inUnit(String.valueOf(value), unit));
        }
        return value;
    }

    /** The same; passes over what is not known. */
    public static void within(String what, @Nullable Long value, long least, long most) {
        if (value != null) {
            within(what, (long) value, least, most);
        }
    }

    /** @throws IllegalArgumentException for a whole number below {@code least} */
    public static long atLeast(String what, long value, long least) {
        if (value < least) {
            throw refused(what, "be " + least + " or more", String.valueOf(value));
        }
        return value;
    }

    /** The same; passes over what is not known. */
    public static void withinIfKnown(String what, @Nullable Number value, double least, double most) {
        if (value != null) {
            within(what, value.doubleValue(), least, most);
        }
    }

    /** A share strictly between 0 and 1, such as a level of confidence. @throws IllegalArgumentException for any other */
    public static double share(String what, double value) {
        if (!(value > 0 && value < 1)) {
            throw refused(what, "be between 0 and 1", PlainNumber.of(value));
        }
        return value;
    }

    /** @throws IllegalArgumentException for an empty or blank text */
    public static String filled(String what, String text) {
        if (text.isBlank()) {
            throw refused(what, "be filled", "empty");
        }
        return text;
    }

    /** The same, and no longer than the record keeps. @param longest in characters */
    public static String filled(String what, String text, int longest) {
        return atMost(what, filled(what, text), longest);
    }

    /** @throws IllegalArgumentException for a text with more characters than {@code longest} */
    public static String atMost(String what, String text, int longest) {
        if (text.length() > longest) {
            throw new IllegalArgumentException(
                    what + " must have at most " + longest + " characters, but had " + text.length());
        }
        return text;
    }

    /** The same of what people know by its name. */
    public static String named(String what, String name) {
        if (name.isBlank()) {
            throw new IllegalArgumentException(what + " must have a name, but it was blank");
        }
        return name;
    }

    /** @throws IllegalArgumentException for a word that is not among {@code words} */
    public static String oneOf(String what, String word, Collection<String> words) {
        if (!words.contains(word)) {
            throw refused(what, "be one of " + String.join(", ", words), "'" + word + "'");
        }
        return word;
    }

    private static String inUnit(String number, String unit) {
        return (number + " " + unit).strip();
    }

    private static IllegalArgumentException refused(String what, String must, String was) {
        return new IllegalArgumentException(what + " must " + must + ", but was " + was);
    }
}
