package org.skeinday.units;

/** A length, zero or more, kept in millimetres. Inch and foot are exact by definition (NIST SP 811, B.8). */
public record Length(double millimetres) implements Comparable<Length> {
    public Length {
        Require.zeroOrMore("Length", millimetres, "mm");
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

    @Override
    public int compareTo(Length other) {
        return Double.compare(millimetres, other.millimetres);
    }
}
