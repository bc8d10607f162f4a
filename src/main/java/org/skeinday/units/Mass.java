package org.skeinday.units;

/** A mass, zero or more, kept in grams. The avoirdupois ounce is 28.349523125 g by definition (NIST SP 811, B.8). */
public record Mass(double grams) implements Comparable<Mass> {
    private static final double GRAMS_PER_OUNCE = 28.349523125;

    public Mass {
        Require.zeroOrMore("Mass", grams, "g");
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

    public double ounces() {
        return grams / GRAMS_PER_OUNCE;
    }

    @Override
    public int compareTo(Mass other) {
        return Double.compare(grams, other.grams);
    }
}
