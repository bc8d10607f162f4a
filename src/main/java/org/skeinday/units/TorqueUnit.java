package org.skeinday.units;

import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** In what a torque meter is marked. */
public enum TorqueUnit {
    MILLINEWTON_METRE("mN·m", 2, Torque::newtonMillimetres),
    INCH_OUNCE("in·ozf", 2, Torque::inchOunces),
    GRAM_CENTIMETRE(
            "gf·cm",
            1,
            torque -> torque.newtonMillimetres() / Torque.ofGramCentimetres(1).newtonMillimetres());

    private final String label;
    private final int decimals;
    private final ToDoubleFunction<Torque> number;

    TorqueUnit(String label, int decimals, ToDoubleFunction<Torque> number) {
        this.label = label;
        this.decimals = decimals;
        this.number = number;
    }

    /** As labels have it. */
    public String label() {
        return label;
    }

    int decimals() {
        return decimals;
    }

    /** So much of it. */
    public double number(Torque torque) {
        return number.applyAsDouble(torque);
    }

    /** The unit in which a torque was typed, such as a meter's division; empty where the text names none of these. */
    public static Optional<TorqueUnit> ofTyped(String typed) {
        String letters = typed.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "");
        return switch (letters) {
            case "inozf", "inoz", "ozin", "ozfin" -> Optional.of(INCH_OUNCE);
            case "gfcm", "gcm", "cmgf" -> Optional.of(GRAM_CENTIMETRE);
            case "mnm", "nmm" -> Optional.of(MILLINEWTON_METRE);
            default -> Optional.empty();
        };
    }
}
