package org.skeinday.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The team's units: lengths as it chose them, torques as its meter shows them. What was typed stays as it was; this is how
 * everything computed is said, and in which unit a bare number is taken.
 */
public enum UnitSystem {
    METRIC(true, TorqueUnit.MILLINEWTON_METRE),
    METRIC_INCH_OUNCE(true, TorqueUnit.INCH_OUNCE),
    METRIC_GRAM(true, TorqueUnit.GRAM_CENTIMETRE),
    INCH(false, TorqueUnit.INCH_OUNCE),
    INCH_MILLINEWTON(false, TorqueUnit.MILLINEWTON_METRE),
    INCH_GRAM(false, TorqueUnit.GRAM_CENTIMETRE);

    private final boolean metric;
    private final TorqueUnit torques;

    UnitSystem(boolean metric, TorqueUnit torques) {
        this.metric = metric;
        this.torques = torques;
    }

    /** Whether lengths are in millimetres and metres. */
    public boolean isMetric() {
        return metric;
    }

    /** The same lengths with torques as this meter shows them. */
    public UnitSystem with(TorqueUnit unit) {
        for (UnitSystem one : values()) {
            if (one.metric == metric && one.torques == unit) {
                return one;
            }
        }
        return this;
    }

    /** A motor, a hook distance, a floor mark: whole millimetres, or tenths of an inch. */
    public String length(Length length) {
        return metric ? plain(length.millimetres(), 0) + " mm" : plain(length.inches(), 1) + " in";
    }

    /** A hall or a lane: metres or feet, one decimal. */
    public String room(Length length) {
        return metric ? plain(length.metres(), 1) + " m" : plain(length.inches() / 12, 1) + " ft";
    }

    /** Rubber is weighed in grams in both systems (common practice). */
    public String mass(Mass mass) {
        return plain(mass.grams(), 2) + " g";
    }

    public String torque(Torque torque) {
        return plain(torqueNumber(torque), torques.decimals()) + " " + torqueUnit();
    }

    /** In {@link #torqueUnit}. */
    public double torqueNumber(Torque torque) {
        return torques.number(torque);
    }

    /** As labels have it. */
    public String torqueUnit() {
        return torques.label();
    }

    /** The same as files and kept texts write it. */
    public String torqueUnitTyped() {
        return torqueUnit().replace('·', '-');
    }

    /** Of a motor, a strip, a hook distance. */
    public String lengthUnit() {
        return metric ? "mm" : "in";
    }

    /** Of a hall or a lane. */
    public String roomUnit() {
        return metric ? "m" : "ft";
    }

    /** Of rubber and models. */
    public String massUnit() {
        return "g";
    }

    /** The word of its lengths, for settings. */
    public String word() {
        return metric ? "metric" : "inch";
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
