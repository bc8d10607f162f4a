package org.skeinday.units;

import java.util.Map;

/**
 * A torque, zero or more, kept in newton millimetres. 1 in·ozf = 7.06155181422604 N·mm, from the pound of
 * 0.45359237 kg, standard gravity 9.80665 m/s² and the inch of 25.4 mm (NIST SP 811, B.8).
 */
public record Torque(double newtonMillimetres) implements Comparable<Torque> {
    private static final double NMM_PER_INCH_OUNCE = 0.45359237 / 16 * 9.80665 * 25.4;
    private static final double NMM_PER_GRAM_CENTIMETRE = 0.0980665;

    public Torque {
        Preconditions.zeroOrMore("Torque", newtonMillimetres, "N·mm");
    }

    public static Torque ofNewtonMillimetres(double nmm) {
        return new Torque(nmm);
    }

    /** One millinewton metre is one newton millimetre. */
    public static Torque ofMillinewtonMetres(double mnm) {
        return new Torque(mnm);
    }

    public static Torque ofInchOunces(double inozf) {
        return new Torque(inozf * NMM_PER_INCH_OUNCE);
    }

    public static Torque ofGramCentimetres(double gfcm) {
        return new Torque(gfcm * NMM_PER_GRAM_CENTIMETRE);
    }

    public double inchOunces() {
        return newtonMillimetres / NMM_PER_INCH_OUNCE;
    }

    /** Reads a typed torque with its unit, for example 0.9 in-ozf, 6.4 mN·m or 65 gf·cm; at most 10 N·m. */
    public static Torque parse(String typed) {
        return parse(typed, "");
    }

    /**
     * Reads a typed torque; without a unit in the text it is in {@code defaultUnit}.
     *
     * @throws Misread saying what is wrong and what would be right
     */
    public static Torque parse(String typed, String defaultUnit) {
        return QuantityText.parse(Typing.KIND, typed, defaultUnit);
    }

    /** @param what names {@code unit}, to begin the refusal with. @throws Misread unless a torque can be typed in it */
    public static void knowUnit(String what, String unit) {
        QuantityText.known(Typing.KIND, what, unit);
    }

    private static final class Typing {
        static final QuantityText.Kind<Torque> KIND = new QuantityText.Kind<>(
                "torque",
                Map.ofEntries(
                        Map.entry("nmm", Torque::ofNewtonMillimetres),
                        Map.entry("mnm", Torque::ofMillinewtonMetres),
                        Map.entry("inozf", Torque::ofInchOunces),
                        Map.entry("inoz", Torque::ofInchOunces),
                        Map.entry("ozin", Torque::ofInchOunces),
                        Map.entry("ozfin", Torque::ofInchOunces),
                        Map.entry("gfcm", Torque::ofGramCentimetres),
                        Map.entry("gcm", Torque::ofGramCentimetres),
                        Map.entry("cmgf", Torque::ofGramCentimetres)),
                "in·ozf, gf·cm, mN·m and N·mm",
                "0.9 in-ozf, 6.4 mN·m or 65 gf·cm",
                new Torque(10_000),
                "10 N·m");
    }

    @Override
    public int compareTo(Torque other) {
        return Double.compare(newtonMillimetres, other.newtonMillimetres);
    }
}
