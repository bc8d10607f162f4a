package org.skeinday.flight;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.units.Misread;
import org.skeinday.units.Preconditions;

/**
 * The density of dry air, ρ = p/(R·T) with R = 287.05 J/(kg·K): the perfect gas of the standard atmosphere (ISO 2533:
 * 287.05287; 15 °C and 1013.25 hPa give 1.225 kg/m³). Humidity is left out: at 20 °C wet air is at most 1 % lighter.
 *
 * @param kilogramsPerCubicMetre above 0
 */
public record AirDensity(double kilogramsPerCubicMetre) {
    private static final double GAS_CONSTANT = 287.05;
    private static final double STANDARD_CELSIUS = 15;
    private static final double STANDARD_HECTOPASCALS = 1013.25;

    private static final String NUMBER = "([-−]?\\d{1,5}(?:[.,]\\d{1,6})?)";
    private static final Pattern TYPED =
            Pattern.compile("(?i)(?:" + NUMBER + " ?(°? ?[CF]))?(?: ?[,;]? ?)(?:" + NUMBER + " ?(hpa|mbar|kpa))?");
    private static final String RIGHT = "write temperature, pressure or both, for example 20 C, 1013 hPa";

    public AirDensity {
        Preconditions.positive("The density of air in kg/m³", kilogramsPerCubicMetre);
    }

    /**
     * @param celsius −20 to 60, as halls are
     * @param hectopascals 500 to 1100, as the air stands there and not reduced to sea level
     */
    public static AirDensity of(double celsius, double hectopascals) {
        Preconditions.within("The temperature in °C", celsius, -20, 60);
        Preconditions.within("The pressure in hPa", hectopascals, 500, 1100);
        return new AirDensity(100 * hectopascals / (GAS_CONSTANT * (celsius + 273.15)));
    }

    /** That of 15 °C and 1013.25 hPa. */
    public static AirDensity standard() {
        return of(STANDARD_CELSIUS, STANDARD_HECTOPASCALS);
    }

    /**
     * Reads {@code 20 C, 1013 hPa}; what is left out of the two is that of the standard. Also °F, mbar and kPa.
     *
     * @throws IllegalArgumentException saying what is wrong and what would be right
     */
    public static AirDensity parse(String typed) {
        Matcher parts = TYPED.matcher(typed.strip().replaceAll("\\s+", " "));
        if (!parts.matches() || parts.group(1) == null && parts.group(3) == null) {
            throw new Misread("'" + typed + "' is no air", RIGHT);
        }
        return of(
                parts.group(1) == null ? STANDARD_CELSIUS : celsius(number(parts.group(1)), parts.group(2)),
                parts.group(3) == null ? STANDARD_HECTOPASCALS : hectopascals(number(parts.group(3)), parts.group(4)));
    }

    private static double celsius(double value, String unit) {
        return unit.toLowerCase(Locale.ROOT).endsWith("f") ? (value - 32) / 1.8 : value;
    }

    private static double hectopascals(double value, String unit) {
        return unit.toLowerCase(Locale.ROOT).equals("kpa") ? 10 * value : value;
    }

    private static double number(String typed) {
        return Double.parseDouble(typed.replace(',', '.').replace('−', '-'));
    }
}
