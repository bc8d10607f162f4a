package org.skeinday.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** The reader's units. What was typed stays as it was; this is how everything computed is said to one reader. */
public enum UnitSystem {
    METRIC,
    INCH;

    /** A motor, a hook distance, a floor mark: whole millimetres, or tenths of an inch. */
    public String length(Length length) {
        return switch (this) {
            case METRIC -> plain(length.millimetres(), 0) + " mm";
            case INCH -> plain(length.inches(), 1) + " in";
        };
    }

    /** A hall or a lane: metres or feet, one decimal. */
    public String room(Length length) {
        return switch (this) {
            case METRIC -> plain(length.metres(), 1) + " m";
            case INCH -> plain(length.inches() / 12, 1) + " ft";
        };
    }

    /** Rubber is weighed in grams in both systems (common practice). */
    public String mass(Mass mass) {
        return plain(mass.grams(), 2) + " g";
    }

    public String torque(Torque torque) {
        return plain(torqueNumber(torque), 2) + " " + torqueUnit();
    }

    /** In {@link #torqueUnit}. */
    public double torqueNumber(Torque torque) {
        return switch (this) {
            case METRIC -> torque.newtonMillimetres();
            case INCH -> torque.inchOunces();
        };
    }

    /** As labels have it. */
    public String torqueUnit() {
        return switch (this) {
            case METRIC -> "mN·m";
            case INCH -> "in·ozf";
        };
    }

    /** The same as files and kept texts write it. */
    public String torqueUnitTyped() {
        return torqueUnit().replace('·', '-');
    }

    /** The word for settings and addresses. */
    public String word() {
        return this == METRIC ? "metric" : "inch";
    }

    /** The system of a word; metric when there is none or it is unknown. */
    public static UnitSystem ofWord(String word) {
        return word.equals("inch") ? INCH : METRIC;
    }

    private static String plain(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
