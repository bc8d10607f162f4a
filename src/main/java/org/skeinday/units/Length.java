package org.skeinday.units;

import java.util.Map;

/** A length, zero or more, kept in millimetres. Inch and foot are exact by definition (NIST SP 811, B.8). */
public record Length(double millimetres) implements Comparable<Length> {
    public Length {
        Preconditions.zeroOrMore("Length", millimetres, "mm");
    }

    public static Length ofMillimetres(double mm) {
        return new Length(mm);
    }

    public static Length ofCentimetres(double cm) {
        return new Length(cm * 10);
    }

    public static Length ofMetres(double m) {
        return new Length(m * 1000);
    }

    public static Length ofInches(double in) {
        return new Length(in * 25.4);
    }

    public static Length ofFeet(double ft) {
        return new Length(ft * 304.8);
    }

    public double inches() {
        return millimetres / 25.4;
    }

    public double metres() {
        return millimetres / 1000;
    }

    /** Reads a typed length with its unit, for example 18.5 in; at most 10 km. */
    public static Length parse(String typed) {
        return parse(typed, "");
    }

    /**
     * Reads a typed length; without a unit in the text it is in {@code defaultUnit}.
     *
     * @throws Misread saying what is wrong and what would be right
     */
    public static Length parse(String typed, String defaultUnit) {
        return QuantityText.parse(Typing.KIND, typed, defaultUnit);
    }

    /** @param what names {@code unit}, to begin the refusal with. @throws Misread unless a length can be typed in it */
    public static void knowUnit(String what, String unit) {
        QuantityText.known(Typing.KIND, what, unit);
    }

    private static final class Typing {
        static final QuantityText.Kind<Length> KIND = new QuantityText.Kind<>(
                "length",
                Map.ofEntries(
                        Map.entry("mm", Length::ofMillimetres),
                        Map.entry("cm", Length::ofCentimetres),
                        Map.entry("m", Length::ofMetres),
                        Map.entry("in", Length::ofInches),
                        Map.entry("inch", Length::ofInches),
                        Map.entry("inches", Length::ofInches),
                        Map.entry("\"", Length::ofInches),
                        Map.entry("ft", Length::ofFeet),
                        Map.entry("foot", Length::ofFeet),
                        Map.entry("feet", Length::ofFeet),
                        Map.entry("'", Length::ofFeet)),
                "mm, cm, m, in and ft",
                "18.5 in, 470 mm, 47 cm, 1.2 m or 4 ft",
                new Length(10_000_000),
                "10 km");
    }

    @Override
    public int compareTo(Length other) {
        return Double.compare(millimetres, other.millimetres);
    }
}
