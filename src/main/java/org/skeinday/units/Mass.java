package org.skeinday.units;

import java.util.Map;

/** A mass, zero or more, kept in grams. The avoirdupois ounce is 28.349523125 g by definition (NIST SP 811, B.8). */
public record Mass(double grams) implements Comparable<Mass> {
    private static final double GRAMS_PER_OUNCE = 28.349523125;

    public Mass {
        Preconditions.zeroOrMore("Mass", grams, "g");
    }

    public static Mass ofGrams(double g) {
        return new Mass(g);
    }

    public static Mass ofMilligrams(double mg) {
        return new Mass(mg / 1000);
    }

    public static Mass ofOunces(double oz) {
        return new Mass(oz * GRAMS_PER_OUNCE);
    }

    /** Reads a typed mass with its unit, for example 1.7 g, 1700 mg or 0.06 oz; at most 10 kg. */
    public static Mass parse(String typed) {
        return parse(typed, "");
    }

    /**
     * Reads a typed mass; without a unit in the text it is in {@code defaultUnit}.
     *
     * @throws Misread saying what is wrong and what would be right
     */
    public static Mass parse(String typed, String defaultUnit) {
        return QuantityText.parse(Typing.KIND, typed, defaultUnit);
    }

    /** @param what names {@code unit}, to begin the refusal with. @throws Misread unless a mass can be typed in it */
    public static void knowUnit(String what, String unit) {
        QuantityText.known(Typing.KIND, what, unit);
    }

    private static final class Typing {
        static final QuantityText.Kind<Mass> KIND = new QuantityText.Kind<>(
                "mass",
                Map.ofEntries(
                        Map.entry("g", Mass::ofGrams),
                        Map.entry("gram", Mass::ofGrams),
                        Map.entry("grams", Mass::ofGrams),
                        Map.entry("mg", Mass::ofMilligrams),
                        Map.entry("oz", Mass::ofOunces)),
                "g, mg and oz",
                "1.7 g, 1700 mg or 0.06 oz",
                new Mass(10_000),
                "10 kg");
    }

    @Override
    public int compareTo(Mass other) {
        return Double.compare(grams, other.grams);
    }
}
